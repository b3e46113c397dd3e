; DR-01: either answer makes a high-risk driver.
(deffunction driving.high-risk () (any-yes drowsy_driving recent_crash_or_near_miss))

; A figure of the report that is on file; what is not there may still be found.
(deffunction on-file (?name) (if (known ?name) then met else unknown))
(deffunction odi (?index) (rate ?index usable.oximetry))
(deffunction odi-on-file ()
  (if (and (empty (odi odi_3)) (empty (odi odi_4))) then unknown else met))
(deffunction below-90 () (any-of (on-file time_below_90) (on-file t90_share)))
; Section 4b: lowest, mean, time at a stated level, ODI with its rule.
(deffunction oxygen.figures ()
  (if-applies (yes channel_oximetry)
    (all-of (on-file spo2_lowest) (on-file spo2_mean) (any-of (below-90) (on-file low_saturation_total)) (odi-on-file))))
; EV-13: the share, or what it can be worked out from.
(deffunction oxygen.below-90 ()
  (if-applies (yes channel_oximetry) (any-of (on-file t90_share) (all-of (on-file time_below_90) (on-file usable.oximetry)))))
(deffunction oxygen.at-or-below-88 () (if-applies (yes channel_oximetry) (on-file low_saturation_total)))
; EV-12
(deffunction oxygen.odi () (if-applies (yes channel_oximetry) (odi-on-file)))
(deffunction oxygen.odi-reversed () (less (odi odi_3) (odi odi_4)))
; At or below 88 % is a part of below 90 %; one stretch is a part of the whole; both are parts of the oximetry.
(deffunction oxygen.levels-reversed () (less (num time_below_90) (num low_saturation_total)))
(deffunction oxygen.stretch-reversed () (less (num low_saturation_total) (num low_saturation_longest)))
(deffunction oxygen.time-too-long ()
  (any-of (less (num usable.oximetry) (num time_below_90)) (less (num usable.oximetry) (num low_saturation_total))))
; EV-13, EV-14: time below a level that the lowest value did not reach. Under 0.05 % a share prints as nothing.
(deffunction oxygen.lowest-contradicted ()
  (any-of
    (all-of (any-of (above (num low_saturation_total) 0) (above (num low_saturation_longest) 0)) (above (num spo2_lowest) 88))
    (all-of (any-of (above (num time_below_90) 0) (at-least (num t90_share) 0.05)) (at-least (num spo2_lowest) 90))))

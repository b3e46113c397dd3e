; EV-03, EV-04: whatever counts by the 4 % rule counts by the 3 % rule.
(deffunction agreement.rules-reversed () (less (rate rei_3 monitoring_time) (rate rei_4 monitoring_time)))
(deffunction agreement.monitoring-too-long () (less (num recording_time) (num monitoring_time)))
(deffunction agreement.usable-too-long ()
  (any-of (less (num recording_time) (num usable.airflow)) (less (num recording_time) (num usable.oximetry))))

; K-05
(deffunction assist.study () (is-word recorder "type I"))
; K-01: sleepiness, trouble falling or staying asleep or unrefreshing sleep, waking breathless, snoring, witnessed apneas.
(deffunction assist.symptom ()
  (any-yes daytime_sleepiness insomnia_complaint insomnia nonrestorative_sleep gasping_choking snoring habitual_snoring
    witnessed_apneas))
(deffunction assist.no-hypoventilation () (all-of (no awake_hypoventilation) (no sleep_hypoventilation)))
; K-03: mixed apneas are among all events, not among the central ones. K-04: the central index may be worked out.
(deffunction central-ones () (sum-of central_apneas central_hypopneas))
(deffunction more-than-half-central ()
  (less (scaled (sum-of obstructive_apneas mixed_apneas central_apneas hypopneas) 0.5) (central-ones)))
(deffunction central-index () (over (central-ones) (num sleep_time)))
; K-01, X-24: exactly 5 is inside. A night without PAP.
(deffunction assist-rate ()
  (or-else (or-else (rate rdi_payer_4 recording_time) (rate ahi_4 sleep_time)) (rate rei_4 monitoring_time)))
(deffunction assist.central-apnea ()
  (if-applies (no pap_used)
    (all-of (at-least (assist-rate) 5) (more-than-half-central) (at-least (central-index) 5) (assist.symptom)
      (assist.no-hypoventilation))))
; K-02: on PAP.
(deffunction assist.complex-apnea ()
  (if-applies (yes pap_used)
    (all-of (below (num obstructive_rate_on_pap) 5) (more-than-half-central) (at-least (central-index) 5))))
; K-05: outside the laboratory a flag only, by the hour of sleep where the recorder stages it, else of monitoring.
(deffunction assist.home-flag ()
  (all-of (more-than-half-central)
    (any-of (all-of (is-word recorder "type II") (at-least (central-index) 5))
      (all-of (is-word recorder "type III" "type IV" "PAT set")
        (at-least (over (central-ones) (num monitoring_time)) 5)))))
; C-18, M-07
(deffunction assist.backup-rate-with-osa () (all-of (is-word device_code "E0471") (is-word diagnosis_code "G47.33")))
(deffunction assist.definition ()
  (all-of (assist.study) (any-of (found (assist.central-apnea)) (found (assist.complex-apnea)))))

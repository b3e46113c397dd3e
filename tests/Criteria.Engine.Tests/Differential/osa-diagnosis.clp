; The index with the widest rule at hand, for each kind of hour (EV-05, EV-06). While that is not the widest there is, a low
; figure settles nothing: the widest rule counts more events.
(deffunction diagnostic-rei () (or-else (rate rei_3 monitoring_time) (rate rei_4 monitoring_time)))
(deffunction diagnostic-sleep-rate ()
  (or-else (or-else (rate rdi_arousal_3a sleep_time) (rate ahi_3a sleep_time)) (rate ahi_4 sleep_time)))
; HS-30: nothing is diagnosed on automatic scoring alone. An REI belongs to a home recorder, a rate of sleep to staged sleep.
(deffunction diagnosable () (all-of (adequacy.gradable) (negate (adequacy.automatic-only))))
(deffunction at-least-an-hour (?n)
  (if-applies (diagnosable)
    (all-of (yes predominantly_obstructive)
      (any-of (all-of (is-word recorder "type III" "type IV" "PAT set") (any-of (at-least (diagnostic-rei) ?n) (at-least (rate rei_3 monitoring_time) ?n)))
        (all-of (is-word recorder "type I" "type II") 
          (any-of (at-least (diagnostic-sleep-rate) ?n) (at-least (rate rdi_arousal_3a sleep_time) ?n)))))))
; DX-03, DX-04
(deffunction osa.five-per-hour () (at-least-an-hour 5))
(deffunction osa.fifteen-per-hour () (at-least-an-hour 15))
; DX-06
(deffunction osa.symptom ()
  (any-yes daytime_sleepiness fatigue insomnia_complaint insomnia impaired_sleep_quality_of_life gasping_choking habitual_snoring
    witnessed_apneas))
; DX-02
(deffunction osa.symptom-or-condition ()
  (any-yes daytime_sleepiness nonrestorative_sleep fatigue insomnia_complaint insomnia gasping_choking habitual_snoring witnessed_apneas
    hypertension mood_disorder cognitive_dysfunction coronary_artery_disease stroke_history heart_failure atrial_fibrillation
    type_2_diabetes))
; DX-01
(deffunction osa.icsd-3 () (if-applies (diagnosable)
  (any-of (all-of (osa.symptom-or-condition) (found (osa.five-per-hour))) (found (osa.fifteen-per-hour)))))
; DX-05
(deffunction osa.icsd-3-tr () (if-applies (diagnosable)
  (all-of (yes not_better_explained)
    (any-of (all-of (osa.symptom) (found (osa.five-per-hour))) (found (osa.fifteen-per-hour))))))
(deffunction osa.editions-disagree ()
  (bind ?old (found (osa.icsd-3))) (bind ?new (found (osa.icsd-3-tr)))
  (any-of (all-of ?old (negate ?new)) (all-of (negate ?old) ?new)))

; What is on file; what is not there may still be found.
(deffunction on-file (?name) (if (known ?name) then met else unknown))
(deffunction all-on-file ($?names)
  (bind ?parts (create$)) (foreach ?n ?names (bind ?parts (create$ ?parts (on-file ?n)))) (all-of ?parts))
(deffunction rate-on-file (?index ?night) (if (empty (rate ?index ?night)) then unknown else met))
; DX-19
(deffunction report.age () (on-file age))
; HS-03
(deffunction report.risk-answers ()
  (all-on-file daytime_sleepiness habitual_snoring witnessed_apneas gasping_choking hypertension))
; HS-04 to HS-06
(deffunction report.exclusions-answered ()
  (all-on-file significant_cardiorespiratory_disease neuromuscular_weakness awake_hypoventilation suspected_sleep_hypoventilation
    chronic_opioid_use stroke_history severe_insomnia other_sleep_disorder_suspected home_circumstances_unsuitable))
; DR-01
(deffunction report.driving-asked () (all-on-file drowsy_driving recent_crash_or_near_miss))
; HR-01
(deffunction report.set-up ()
  (all-of (all-on-file recorder channel_thoracic_effort channel_abdominal_effort channel_oximetry channel_heart_rate channel_position
      channel_snore)
    (any-of (on-file channel_airflow) (on-file channel_nasal_pressure) (on-file channel_thermal_airflow))))
; HR-02
(deffunction report.times ()
  (all-of (all-on-file night.date recording_time monitoring_time usable.oximetry)
    (any-of (on-file usable.airflow) (on-file usable.pat))))
; HR-03
(deffunction report.index ()
  (any-of (rate-on-file rei_4 monitoring_time) (rate-on-file rei_3 monitoring_time) (rate-on-file ahi_4 sleep_time)
    (rate-on-file ahi_3a sleep_time)))
; EV-02: types only where effort was recorded.
(deffunction report.counts ()
  (if-applies (any-yes channel_thoracic_effort channel_abdominal_effort)
    (all-on-file obstructive_apneas mixed_apneas central_apneas hypopneas)))
; HR-04
(deffunction report.position ()
  (if-applies (yes channel_position) (all-on-file supine_events supine_time other_events other_time)))
; HR-06
(deffunction report.heart-rate ()
  (if-applies (any-yes channel_heart_rate channel_ecg) (all-on-file heart_rate_mean heart_rate_highest heart_rate_lowest)))
(deffunction report.snoring () (if-applies (yes channel_snore) (on-file snoring_seen)))
; HR-07, HS-30: a physician's, signed, and written after the night.
(deffunction signed-after-night (?id)
  (all-of (is-word (attribute ?id author) physician) (signed ?id) (at-least (days-from (num night.date) (num (attribute ?id date))) 0)))
(deffunction report.summary ()
  (all-of (on-file technically_adequate) (on-file repeat_needed) (yes raw_data_reviewed)
    (some-entry documents (create$ "sleep test report") signed-after-night)))
; HS-20
(deffunction report.next-test ()
  (if-applies (any-of (found (severity.negative)) (adequacy.inadequate) (yes called_inconclusive)) (yes next_test_named)))

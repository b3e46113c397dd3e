; HS-03: sleepiness, and two of three.
(deffunction hsat.increased-risk ()
  (all-of (yes daytime_sleepiness)
    (at-least-of 2 (yes habitual_snoring) (any-yes witnessed_apneas gasping_choking) (yes hypertension))))
; HS-04, HS-05
(deffunction hsat.complicating-condition ()
  (any-yes significant_cardiorespiratory_disease neuromuscular_weakness awake_hypoventilation suspected_sleep_hypoventilation
    chronic_opioid_use stroke_history severe_insomnia))
; HS-06
(deffunction hsat.further-obstacle () (any-yes other_sleep_disorder_suspected home_circumstances_unsuitable))
; HS-07: one whole set. A report that names no airflow sensor leaves open whether it was nasal pressure.
(deffunction pat-set () (all-yes channel_pat channel_oximetry channel_actigraphy))
(deffunction flow-set () (all-yes channel_nasal_pressure channel_thoracic_effort channel_abdominal_effort channel_oximetry))
(deffunction hsat.sensors ()
  (standing met
    (all-of (yes channel_airflow) (no channel_nasal_pressure) (no channel_thermal_airflow) (negate (pat-set))
      (all-yes channel_thoracic_effort channel_abdominal_effort channel_oximetry))
    (any-of (flow-set) (pat-set))))
; HS-02, HS-04 to HS-06: both tests are laid out, with what speaks for and against each; a home test only once, and not where a
; laboratory study has made the diagnosis or was about a therapy.
(deffunction hsat.option-home ()
  (if-applies (all-of (no home_test_done) (any-of (no laboratory_study_done) (all-of (negate (found (funcall pathway.osa))) (no pap_used)))) met))
(deffunction hsat.option-laboratory () met)
; HS-30: history and a face-to-face examination, telemedicine included, before the night.
(deffunction seen-before-night (?id)
  (all-of (any-of (has ?id in_person) (has ?id telehealth)) (at-most (days-from (num night.date) (num (attribute ?id date))) 0)))
(deffunction hsat.examination () (some-entry documents (create$ "clinical evaluation") seen-before-night))

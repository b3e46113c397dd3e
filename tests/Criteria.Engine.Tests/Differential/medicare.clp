; What both Medicare policies of one sleep test share: who may write, what came before the night, and the two routes.
; A treating practitioner is a physician, or a PA, NP or CNS (D-09); a signature counts (O-06).
(deffunction practitioner (?id) (is-word (attribute ?id author) physician "physician assistant" "nurse practitioner" "clinical nurse specialist"))
(deffunction days-before-night (?id) (days-from (num (attribute ?id date)) (num night.date)))
; P-01. The day of the night itself leaves open which came first, and telehealth is open (X-13).
(deffunction visit-before (?id)
  (all-of (practitioner ?id) (signed ?id) (has ?id in_person) (at-least (days-before-night ?id) 1)))
(deffunction visit-same-day (?id)
  (all-of (practitioner ?id) (signed ?id) (has ?id in_person) (equals (days-before-night ?id) 0)))
(deffunction telehealth-before (?id)
  (all-of (practitioner ?id) (signed ?id) (has ?id telehealth) (at-least (days-before-night ?id) 0)))
(deffunction evaluations ($?x) (create$ "clinical evaluation"))
(deffunction evaluation-before-test ()
  (bind ?before (some-entry documents (evaluations) visit-before))
  (standing met
    (all-of (negate ?before) (any-of (some-entry documents (evaluations) visit-same-day) (some-entry documents (evaluations) telehealth-before)))
    ?before))
; P-11
(deffunction whole-content (?id)
  (all-of (has ?id records_symptoms) (has ?id records_sleepiness_scale) (has ?id records_exam) (has ?id records_neck) (has ?id records_bmi)))
(deffunction content-before (?id) (all-of (at-least (days-before-night ?id) 0) (whole-content ?id)))
(deffunction measured () (all-of (recorded neck) (any-of (recorded bmi) (if (empty (body-mass-index)) then unknown else met)) (recorded epworth_total)))
(deffunction evaluation-content () (all-of (some-entry documents (evaluations) content-before) (measured)))
; P-05, P-06. X-18: a related finding without a listed one is open.
(deffunction listed ()
  (any-yes daytime_sleepiness impaired_cognition cognitive_dysfunction mood_disorder insomnia insomnia_complaint hypertension
    ischemic_heart_disease coronary_artery_disease stroke_history))
(deffunction listed-condition ()
  (standing met (all-of (negate (listed)) (any-yes tia_history anxiety_disorder fatigue nocturia)) (listed)))
; P-03, P-04, P-08
(deffunction first-route () (all-of (at-least (payer-rate) 15) (at-least (payer-events) 30)))
(deffunction second-route (?listed)
  (all-of (at-least (payer-rate) 5) (at-most (payer-rate) 14) (at-least (payer-events) 10) ?listed))
; Open where the readings part: between 14 and 15 (X-01), a short night with 10 to 29 events (X-03), pieces of a night
; with so few events (X-04), and a denominator that is not the recording time (D-06).
(deffunction between-routes (?listed)
  (all-of (above (payer-rate) 14) (below (payer-rate) 15) (at-least (payer-events) 10) ?listed))
(deffunction short-night (?listed)
  (all-of (above (payer-rate) 14) (below (payer-hours) 120) (at-least (payer-events) 10) (below (payer-events) 30) ?listed))
(deffunction in-pieces (?listed)
  (all-of (yes recording_in_fragments) (second-route ?listed) (below (payer-events) 30)))
(deffunction over-recording () (over (payer-events) (num recording_time)))
; T-01 to T-06, by the signals that were recorded
(deffunction airflow () (any-yes channel_airflow channel_nasal_pressure channel_thermal_airflow))
(deffunction heart () (any-yes channel_ecg channel_heart_rate))
(deffunction covered-test ()
  (any-of
    (all-of (is-word recorder "type I" "type II") (all-yes channel_eeg channel_eog channel_chin_emg channel_oximetry) (heart) (airflow)
      (any-yes channel_thoracic_effort channel_abdominal_effort))
    (all-of (at-least-of 2 (airflow) (yes channel_thoracic_effort) (yes channel_abdominal_effort)) (heart) (yes channel_oximetry))
    (all-of (airflow) (at-least-of 2 (yes channel_oximetry) (yes channel_thoracic_effort) (yes channel_abdominal_effort) (heart)
      (yes channel_position) (yes channel_snore) (yes channel_actigraphy)))
    (all-yes channel_pat channel_oximetry channel_actigraphy)))
; T-09, T-10
(deffunction order-before (?id) (all-of (practitioner ?id) (at-least (days-before-night ?id) 1)))
(deffunction order-same-day (?id) (all-of (practitioner ?id) (equals (days-before-night ?id) 0)))
(deffunction order-before-test ()
  (bind ?before (some-entry documents (create$ "test order") order-before))
  (standing met (all-of (negate ?before) (some-entry documents (create$ "test order") order-same-day)) ?before))
; R-02
(deffunction report-signed (?id) (all-of (signed ?id) (at-most (days-before-night ?id) 0)))
(deffunction test-report () (some-entry documents (create$ "sleep test report") report-signed))
; T-11, T-12: of a home test
(deffunction no-supplier-part ()
  (any-of (no supplier_handled_test) (yes supplier_is_certified_hospital) (is-word recorder "type I")))
(deffunction a-record (?id) met)

; DX-09, DX-11, DX-14, DX-16, DX-18, HS-04
(deffunction laboratory.option-pattern () (if-applies (pathway.review-first) met))
; OP-01
(deffunction laboratory.opioids-and-lung () (if-applies (yes chronic_opioid_use) (yes chronic_lung_disease)))
; OH-01: obese, with sleep-disordered breathing, suspicion low or moderate: the cut is 27.
(deffunction obese-with-apnea () (all-of (pathway.osa) (at-least (body-mass-index) 30)))
(deffunction hypoventilation.very-unlikely ()
  (if-applies (all-of (obese-with-apnea) (is-word hypoventilation_suspicion "low or moderate")) (below (num bicarbonate) 27)))
; OH-01, OH-02: from 27, or at once on high suspicion
(deffunction hypoventilation.option-gas ()
  (if-applies (all-of (obese-with-apnea)
    (any-of (is-word hypoventilation_suspicion "high") (at-least (num bicarbonate) 27))) met))
; Checklist: one of the two on record with obesity and suspicion
(deffunction on-record (?name) (if (known ?name) then met else unknown))
(deffunction hypoventilation.measured ()
  (if-applies (all-of (at-least (body-mass-index) 30) (yes suspected_sleep_hypoventilation))
    (any-of (on-record bicarbonate) (on-record awake_paco2))))
; OH-03, SEV-11: above 30, whatever is set for exactly 30
(deffunction index-exceeds (?index ?night ?recorder ?n)
  (all-of ?recorder (above (rate ?index ?night) ?n)))
(deffunction hypoventilation.severe-osa ()
  (if-applies (adequacy.gradable)
    (any-of (index-exceeds rei_4 monitoring_time (home-recorder) 30) (index-exceeds rei_3 monitoring_time (home-recorder) 30)
      (index-exceeds ahi_4 sleep_time (staged-sleep) 30) (index-exceeds ahi_3a sleep_time (staged-sleep) 30))))
(deffunction hypoventilation.option-cpap-first ()
  (if-applies (all-of (pattern.obesity-hypoventilation) (found (hypoventilation.severe-osa)) (yes hypoventilation_stable)) met))
; AS-01, AS-02, in heart failure: up to 45 % and above; mild central apnea is the other way in.
(deffunction servo-ventilation.option-of-2016 () (any-of (above (num lvef) 45) (is-word central_apnea_grade "mild")))
(deffunction servo-ventilation.against-in-2016 ()
  (all-of (at-most (num lvef) 45) (is-word central_apnea_grade "moderate" "severe")))
; AS-04
(deffunction servo-ventilation.expert-centers () (all-of (at-least (num lvef) 30) (at-most (num lvef) 45)))
(deffunction servo-ventilation.palliative-only () (below (num lvef) 30))
; AS-05
(deffunction servo-ventilation.harm-in-2017 () (all-of (yes ejection_fraction_reduced) (is-word nyha_class "II" "III" "IV")))
; AS-01 to AS-05 speak of central apnea in heart failure, periodic breathing among it.
(deffunction servo-ventilation.option ()
  (if-applies (all-of (yes heart_failure) (any-of (pattern.central-predominant) (pattern.periodic-breathing))) met))
; AS-05: when sleep-disordered breathing or sleepiness is suspected
(deffunction laboratory.option-heart-failure ()
  (if-applies (all-of (yes heart_failure) (any-of (osa.symptom) (pathway.review-first))) met))
; AR-01, AR-02
(deffunction rhythm.option-screening () (if-applies (all-of (any-yes atrial_fibrillation other_arrhythmia) (no home_test_done)) met))

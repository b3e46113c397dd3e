; That such an entry is there at all.
(deffunction listed (?id) met)
; PA-02, with the Epworth total of ES-01
(deffunction pathway.pap-sleepiness () (any-of (yes daytime_sleepiness) (above (num epworth_total) 10)))
; PA-02, PA-03: sleepiness, quality of life, high blood pressure
(deffunction pathway.pap-no-ground ()
  (all-of (negate (pathway.pap-sleepiness)) (no impaired_sleep_quality_of_life) (no hypertension)))
; PA-01: on a diagnosis by objective testing
(deffunction pathway.pap () (if-applies (pathway.osa) met))
; PA-04, while no PAP has begun
(deffunction pathway.pap-start ()
  (if-applies (all-of (pathway.osa) (negate (some-entry therapy (create$ "PAP") listed))) met))
(deffunction pathway.pap-education ()
  (if-applies (some-entry therapy (create$ "PAP") listed) (some-entry documents (create$ "instruction record") listed)))

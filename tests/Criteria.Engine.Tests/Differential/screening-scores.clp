; NS-01: 3 points from a BMI of 25, 5 from 30.
(deffunction nosas-points ()
  (bind ?bmi (body-mass-index))
  (points 4 (above (num neck) 40) 3 (at-least ?bmi 25) 2 (at-least ?bmi 30)
    2 (any-yes snoring habitual_snoring) 4 (above (num age) 55) 2 (is-word sex male)))
(deffunction nosas () (score (nosas-points) (create$ "below the cut" "at risk") (create$ 8)))
; GO-01
(deffunction goal ()
  (score (points 1 (is-word sex male) 1 (at-least (body-mass-index) 30) 1 (at-least (num age) 50) 1 (yes habitual_snoring))
    (create$ "below the cut" "high risk") (create$ 2)))
; BQ-01: the third category is hypertension or obesity.
(deffunction berlin ()
  (at-least-of 2 (at-least (num berlin_breathing_points) 2) (at-least (num berlin_sleepiness_points) 2)
    (any-of (yes hypertension) (above (body-mass-index) 30))))
; MP-01
(deffunction airway.crowded () (is-word mallampati "III" "IV"))
; ES-02
(deffunction epworth.class () (graded epworth_total 
  (create$ "lower normal" "higher normal" "mild excess" "moderate excess" "severe excess") (create$ 6 11 13 16)))
; IS-01
(deffunction insomnia.class () (graded isi_total (create$ none subthreshold moderate severe) (create$ 8 15 22)))
; IS-02
(deffunction insomnia.case-finding () (at-least (num isi_total) 10))
; BM-01
(deffunction bmi.class () (if (and (na bmi) (empty (body-mass-index))) then (return not-applicable)) (class-of (body-mass-index)
  (create$ "underweight" "normal weight" "overweight" "obesity class 1" "obesity class 2" "obesity class 3") (create$ 18.5 25 30 35 40)))
; NK-01: above 17 inches in men, above 16 in women.
(deffunction neck.large-us () (by-sex (above (num neck) (* 17 2.54)) (above (num neck) (* 16 2.54))))
; NK-02: the page prints both at least and above; exactly at the limit nobody can say.
(deffunction neck.large-australia ()
  (standing met (by-sex (equals (num neck) 42) (equals (num neck) 39))
    (by-sex (above (num neck) 42) (above (num neck) 39))))

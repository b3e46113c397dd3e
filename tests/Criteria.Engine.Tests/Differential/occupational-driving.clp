; DR-01; that other safety-sensitive work is treated alike is practice.
(deffunction driving.safety-sensitive-work () (any-yes safety_sensitive_work commercial_driver))
; DR-02: laid out for a high-risk driver.
(deffunction driving.option-fast () (if-applies (driving.high-risk) met))
; DR-03: everything rests on sleepiness that affects driving.
(deffunction in-britain () (is-word jurisdiction "UK"))
(deffunction sleepy-with-apnea () (all-of (pathway.osa) (yes sleepiness_affects_driving)))
(deffunction driving.uk-stop () (if-applies (in-britain) (sleepy-with-apnea)))
; An index of 15 or more, no scoring rule named: open where the two rules part at 15.
(deffunction part-at-15 (?wide ?narrow ?night ?recorder)
  (if (or (no-rate ?wide ?night) (no-rate ?narrow ?night)) then not-met else
    (all-of (adequacy.gradable) ?recorder (at-least (rate ?wide ?night) 15) (below (rate ?narrow ?night) 15))))
(deffunction driving.uk-notify ()
  (standing (in-britain)
    (all-of (sleepy-with-apnea)
      (any-of (part-at-15 rei_3 rei_4 monitoring_time (home-recorder)) (part-at-15 ahi_3a ahi_4 sleep_time (staged-sleep))))
    (all-of (sleepy-with-apnea) (pathway.at-least-moderate))))
; DR-03: below 15, and not under control in three months.
(deffunction driving.uk-notify-mild ()
  (if-applies (all-of (in-britain) (pathway.osa) (negate (pathway.at-least-moderate)))
    (all-of (yes sleepiness_affects_driving) (no sleepiness_controlled_in_three_months))))
; DR-04: three months of it with sleep apnea, suspected (working reading: the signs of HS-03) or shown.
(deffunction driving.uk-notify-three-months ()
  (if-applies (in-britain)
    (all-of (any-of (pathway.osa) (hsat.increased-risk)) (yes sleepiness_affects_driving) (at-least (num sleepiness_months) 3))))
; Section 11, item 19
(deffunction driving.uk-no-notice () (if-applies (in-britain) (all-of (pathway.osa) (no sleepiness_affects_driving))))
; NK-03: above 17 inches in men, above 15.5 in women.
(deffunction driving.us-large-neck () (by-sex (above (num neck) (* 17 2.54)) (above (num neck) (* 15.5 2.54))))
; DR-05, DR-06: a panel on commercial drivers.
(deffunction panel-driver () (all-of (is-word jurisdiction "US") (yes commercial_driver)))
(deffunction panel-signs ()
  (at-least-of 3 (yes hypertension) (yes type_2_diabetes)
    (any-yes stroke_history coronary_artery_disease atrial_fibrillation other_arrhythmia)
    (yes small_or_set_back_jaw) (yes habitual_snoring) (yes witnessed_apneas) (yes small_airway)
    (driving.us-large-neck) (yes untreated_hypothyroidism) (at-least (num age) 42)
    (any-of (is-word sex male) (yes postmenopausal))))
(deffunction driving.us-panel-test ()
  (bind ?bmi (body-mass-index))
  (if-applies (panel-driver)
    (any-of (at-least ?bmi 40) (all-of (at-least ?bmi 33) (panel-signs)))))
(deffunction driving.us-panel-card () (if-applies (panel-driver) (pathway.osa)))
; Moderate or severe disease brought below 15.
(deffunction driving.us-panel-effective ()
  (if-applies (all-of (panel-driver) (pathway.osa) (pathway.at-least-moderate))
    (all-of (below (num treated_rate) 15) (yes effective_by_specialist))))
(deffunction driving.us-panel-disqualify ()
  (if-applies (panel-driver)
    (any-yes daytime_sleepiness fatigue drowsy_driving recent_crash_or_near_miss treatment_not_followed)))

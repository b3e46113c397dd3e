; H-01, HN-01; H-02
(deffunction implant.age () (at-least (num age) 22))
(deffunction implant.bmi () (below (body-mass-index) 35))
; Calendar months on day numbers; a month that is too short ends on its last day.
(deffunction date-of-day (?n)
  (bind ?z (+ (integer ?n) 306)) (bind ?era (div ?z 146097)) (bind ?doe (- ?z (* ?era 146097)))
  (bind ?yoe (div (- (+ (- ?doe (div ?doe 1460)) (div ?doe 36524)) (div ?doe 146096)) 365))
  (bind ?doy (- ?doe (- (+ (* 365 ?yoe) (div ?yoe 4)) (div ?yoe 100))))
  (bind ?mp (div (+ (* 5 ?doy) 2) 153))
  (bind ?m (if (< ?mp 10) then (+ ?mp 3) else (- ?mp 9)))
  (create$ (+ ?yoe (* 400 ?era) (if (<= ?m 2) then 1 else 0)) ?m (+ 1 (- ?doy (div (+ (* 153 ?mp) 2) 5)))))
(deffunction day-of-date (?y ?m ?d)
  (bind ?yy (if (<= ?m 2) then (- ?y 1) else ?y)) (bind ?era (div ?yy 400)) (bind ?yoe (- ?yy (* ?era 400)))
  (bind ?mp (if (> ?m 2) then (- ?m 3) else (+ ?m 9)))
  (- (+ (* ?era 146097) (* 365 ?yoe) (div ?yoe 4) (- 0 (div ?yoe 100)) (div (+ (* 153 ?mp) 2) 5) (- ?d 1)) 306))
(deffunction months-on (?n ?months)
  (bind ?c (date-of-day ?n))
  (bind ?t (+ (* 12 (nth$ 1 ?c)) (- (nth$ 2 ?c) 1) ?months))
  (bind ?first (day-of-date (div ?t 12) (+ 1 (mod ?t 12)) 1))
  (bind ?next (day-of-date (div (+ ?t 1) 12) (+ 1 (mod (+ ?t 1) 12)) 1))
  (min (+ ?first (- (nth$ 3 ?c) 1)) (- ?next 1)))
; H-03, X-21: a laboratory study at most 24 months before the first consultation. A test elsewhere, or one within 24 months
; after, leaves it open.
(deffunction study-window (?from ?to)
  (bind ?night (num night.date)) (bind ?seen (num implant_consultation))
  (if (or (empty ?night) (empty ?seen)) then (return unknown))
  (bind ?at (nth$ 1 ?seen))
  (all-of (at-least ?night (months-on ?at ?from)) (at-most ?night (months-on ?at ?to))))
(deffunction study-after ()
  (bind ?days (days-from (num implant_consultation) (num night.date)))
  (all-of (if (empty ?days) then unknown else (at-least ?days 1)) (study-window 0 24)))
(deffunction implant.study ()
  (standing met
    (any-of (all-of (is-word recorder "type II" "type III" "type IV" "PAT set") (study-window -24 0))
      (all-of (is-word recorder "type I") (study-after)))
    (all-of (is-word recorder "type I") (study-window -24 0))))
; H-04: both ends are inside. The rate is Medicare's: per hour of recording, else of sleep, else of monitoring, by 4 %.
(deffunction medicare-rate ()
  (or-else (or-else (rate rdi_payer_4 recording_time) (rate ahi_4 sleep_time)) (rate rei_4 monitoring_time)))
(deffunction implant.rate () (all-of (at-least (medicare-rate) 15) (at-most (medicare-rate) 65)))
; H-05, K-06, X-21: central and mixed apneas against a quarter of all; exactly a quarter is open.
(deffunction central-or-mixed () (sum-of central_apneas mixed_apneas))
(deffunction a-quarter () (scaled (sum-of obstructive_apneas mixed_apneas central_apneas hypopneas) 0.25))
(deffunction implant.event-mix ()
  (standing met
    (all-of (negate (less (central-or-mixed) (a-quarter))) (negate (less (a-quarter) (central-or-mixed))))
    (less (central-or-mixed) (a-quarter))))
; H-06: failure, or intolerance in each contractor's words. Of seven nights five short of four hours leave two; five with four
; hours not reached leave four. Between the two readings it is open.
(deffunction trial-number (?id ?name) (num (attribute ?id ?name)))
(deffunction rate-left (?id) (above (trial-number ?id residual_rate) 15))
(deffunction nights-up-to (?id ?n) (at-most (trial-number ?id nights_above_4h) ?n))
(deffunction given-back (?id) (has ?id returned))
(deffunction month-up-to (?id ?n) (at-most (trial-number ?id month_share_4h) ?n))
(deffunction month-below (?id ?n) (below (trial-number ?id month_share_4h) ?n))
(deffunction some-pap (?fits $?more) (some-entry therapy (create$ "PAP") ?fits (expand$ ?more)))
(deffunction failed-or-short () (any-of (some-pap rate-left) (some-pap nights-up-to 2)))
(deffunction implant.pap-noridian ()
  (bind ?sure (any-of (failed-or-short) (some-pap given-back)))
  (standing met (all-of (some-pap nights-up-to 4) (negate ?sure)) ?sure))
(deffunction implant.pap-wps ()
  (standing met (all-of (some-pap nights-up-to 4) (negate (failed-or-short))) (failed-or-short)))
; Seventy percent of a month's nights short of four hours leave thirty with them.
(deffunction implant.pap-palmetto ()
  (bind ?sure (some-pap month-up-to 30))
  (standing met (all-of (some-pap month-below 70) (negate ?sure)) ?sure))
; X-25: the contractor's own words. Where these were not seen, all three wordings or none.
(deffunction as-contractor-words (?noridian ?wps ?palmetto)
  (bind ?all (all-of ?noridian ?wps ?palmetto))
  (standing met
    (all-of (is-word contractor "CGS" "NGS" "other") (any-of ?noridian ?wps ?palmetto) (negate ?all))
    (any-of ?all (all-of (is-word contractor "Noridian") ?noridian) (all-of (is-word contractor "WPS") ?wps)
      (all-of (is-word contractor "Palmetto") ?palmetto))))
(deffunction implant.pap-unsuitable ()
  (as-contractor-words (implant.pap-noridian) (implant.pap-wps) (implant.pap-palmetto)))
(deffunction implant.shared-decision ()
  (as-contractor-words (yes decision_any_provider) (yes decision_referring_and_implanting) (yes decision_sleep_and_ent)))
; H-07, H-08
(deffunction implant.palate () (no concentric_palatal_collapse))
(deffunction implant.anatomy () (no implant_anatomy))
; H-09. A neuromuscular condition that may weaken the breathing is one of the diseases meant.
(deffunction implant.exclusion ()
  (any-of
    (any-yes implant_neuromuscular neuromuscular_weakness implant_hypoglossal_palsy implant_severe_lung_disease
      implant_pulmonary_hypertension implant_valve_disease implant_recent_heart_event implant_uncontrolled_hypertension
      implant_mental_illness implant_other_sleep_disorder pregnant implant_mri_needed implant_cannot_operate)
    (all-of (yes heart_failure) (is-word nyha_class "III" "IV"))))
; H-11: six states, from 2026-01-01 to 2031-12-31.
(deffunction implant.prior-authorization ()
  (bind ?day (num coverage.service_date))
  (all-of (is-word state_of_service "AZ" "NJ" "OH" "OK" "TX" "WA")
    (at-least ?day (day-of-date 2026 1 1)) (at-most ?day (day-of-date 2031 12 31))))
(deffunction implant.coverage ()
  (all-of (implant.age) (implant.bmi) (found (implant.study)) (implant.rate) (found (implant.event-mix))
    (found (implant.pap-unsuitable)) (found (implant.shared-decision)) (implant.palate) (implant.anatomy)
    (negate (implant.exclusion))))

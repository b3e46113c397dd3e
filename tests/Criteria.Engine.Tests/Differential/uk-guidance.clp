; Only where the case names the United Kingdom.
(deffunction in-uk () (is-word jurisdiction "UK"))
; HS-32, U-01: two of nine features.
(deffunction uk.assessment ()
  (if-applies (in-uk)
    (at-least-of 2 (any-yes snoring habitual_snoring) (yes witnessed_apneas) (yes nonrestorative_sleep) (yes morning_headache)
      (any-yes daytime_sleepiness fatigue) (yes nocturia) (yes gasping_choking) (any-yes insomnia_complaint insomnia)
      (any-yes impaired_cognition cognitive_dysfunction))))
; U-04: the first choice of test for whom the guideline wants assessed.
(deffunction uk.option-polygraphy () (if-applies (in-uk) (found (uk.assessment))))
(deffunction recorded-at-home () (is-word recorder "type III" "type IV" "PAT set"))
(deffunction sleep-staged () (any-of (is-word recorder "type I" "type II") (yes channel_eeg)))
; SEV-03, U-02: exactly 30 is severe, whatever the general setting says.
(deffunction uk-home () (all-of (in-uk) (adequacy.gradable) (recorded-at-home)))
(deffunction uk-staged () (all-of (in-uk) (adequacy.gradable) (sleep-staged)))
(deffunction uk-class (?index ?night ?applies)
  (if (no-rate ?index ?night) then not-applicable else
    (if-applies ?applies (class-of (rate ?index ?night) (create$ "below 5" mild moderate severe) (create$ 5 15 30)))))
(deffunction uk.severity.rei-4 () (uk-class rei_4 monitoring_time (uk-home)))
(deffunction uk.severity.rei-3 () (uk-class rei_3 monitoring_time (uk-home)))
(deffunction uk.severity.ahi-4 () (uk-class ahi_4 sleep_time (uk-staged)))
(deffunction uk.severity.ahi-3a () (uk-class ahi_3a sleep_time (uk-staged)))
; SEV-05, U-03: the text of 2008 has no name for what lies between 14 and 15, and calls exactly 30 moderate. A known rate is
; enough, by whichever rule; an index that the case has not got is not asked for.
(deffunction older-text-parts (?rate)
  (any-of (all-of (above ?rate 14) (below ?rate 15)) (equals ?rate 30)))
(deffunction either-rule (?one ?two ?night)
  (bind ?a (rate ?one ?night)) (bind ?b (rate ?two ?night))
  (any-of (older-text-parts (or-else ?a ?b)) (older-text-parts (or-else ?b ?a))))
(deffunction uk.older-bands ()
  (if-applies (all-of (in-uk) (adequacy.gradable))
    (any-of
      (all-of (recorded-at-home) (either-rule rei_3 rei_4 monitoring_time))
      (all-of (is-word recorder "type I" "type II") (either-rule ahi_3a ahi_4 sleep_time)))))
; U-02, U-05: obstructive disease from a rate on, by the widest rule at hand. A low figure by a narrow rule settles nothing
; against it: the widest counts more events.
(deffunction uk-widest-rei () (or-else (rate rei_3 monitoring_time) (rate rei_4 monitoring_time)))
(deffunction uk-widest-ahi () (or-else (rate ahi_3a sleep_time) (rate ahi_4 sleep_time)))
(deffunction uk-from (?n)
  (if-applies (all-of (in-uk) (adequacy.gradable) (negate (adequacy.automatic-only)))
    (all-of (yes predominantly_obstructive)
      (any-of
        (all-of (recorded-at-home) (any-of (at-least (uk-widest-rei) ?n) (at-least (rate rei_3 monitoring_time) ?n)))
        (all-of (is-word recorder "type I" "type II") (any-of (at-least (uk-widest-ahi) ?n) (at-least (rate ahi_3a sleep_time) ?n)))))))
(deffunction uk.mild-or-worse () (uk-from 5))
(deffunction uk.moderate-or-severe () (uk-from 15))
; U-05, X-30: no condition on symptoms from moderate on; both conditions in mild disease.
(deffunction uk.option-cpap () (if-applies (in-uk) (found (uk.moderate-or-severe))))
(deffunction uk.option-cpap-mild ()
  (if-applies (in-uk)
    (all-of (found (uk.mild-or-worse)) (negate (found (uk.moderate-or-severe)))
      (all-yes impaired_sleep_quality_of_life symptoms_limit_activities))))

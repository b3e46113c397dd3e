; Guidance of the United Kingdom, for its patients.
(deffunction british () (is-word jurisdiction UK))
; U-01, HS-32: two of nine features.
(deffunction uk.assessment ()
  (if-applies (british)
    (at-least-of 2 (any-yes snoring habitual_snoring) (yes witnessed_apneas) (yes nonrestorative_sleep) (yes morning_headache)
      (any-yes daytime_sleepiness fatigue) (yes nocturia) (yes gasping_choking) (any-yes insomnia_complaint insomnia)
      (any-yes impaired_cognition cognitive_dysfunction))))
; U-04
(deffunction uk.option-polygraphy () (if-applies (all-of (british) (no home_test_done)) (found (uk.assessment))))
; U-02, SEV-03
(deffunction uk-home () (is-word recorder "type III" "type IV" "PAT set"))
(deffunction uk-staged () (any-of (is-word recorder "type I" "type II") (yes channel_eeg)))
(deffunction uk-grade (?index ?night ?recorder)
  (if (no-rate ?index ?night) then not-applicable else
    (if-applies (all-of (british) (adequacy.gradable) ?recorder)
      (class-of (rate ?index ?night) (create$ "below 5" mild moderate severe) (create$ 5 15 30)))))
(deffunction uk.severity.rei-4 () (uk-grade rei_4 monitoring_time (uk-home)))
(deffunction uk.severity.rei-3 () (uk-grade rei_3 monitoring_time (uk-home)))
(deffunction uk.severity.ahi-4 () (uk-grade ahi_4 sleep_time (uk-staged)))
(deffunction uk.severity.ahi-3a () (uk-grade ahi_3a sleep_time (uk-staged)))
; U-03: exactly 30 is moderate there, and what lies between 14 and 15 has no name.
(deffunction unnamed (?rate) (any-of (equals ?rate 30) (all-of (above ?rate 14) (below ?rate 15))))
; The widest and the narrowest rule at hand.
(deffunction rei-wide () (or-else (rate rei_3 monitoring_time) (rate rei_4 monitoring_time)))
(deffunction rei-narrow () (or-else (rate rei_4 monitoring_time) (rate rei_3 monitoring_time)))
(deffunction ahi-wide () (or-else (rate ahi_3a sleep_time) (rate ahi_4 sleep_time)))
(deffunction ahi-narrow () (or-else (rate ahi_4 sleep_time) (rate ahi_3a sleep_time)))
(deffunction uk-laboratory () (is-word recorder "type I" "type II"))
(deffunction uk.older-bands ()
  (if-applies (all-of (british) (adequacy.gradable))
    (any-of (all-of (uk-home) (any-of (unnamed (rei-wide)) (unnamed (rei-narrow))))
      (all-of (uk-laboratory) (any-of (unnamed (ahi-wide)) (unnamed (ahi-narrow)))))))
; Obstructive sleep apnea from so many events an hour; nothing rests on automatic scoring alone (HS-30). A low figure of a
; narrower rule settles nothing.
(deffunction events-from (?n)
  (if-applies (all-of (british) (adequacy.gradable) (negate (adequacy.automatic-only)))
    (all-of (yes predominantly_obstructive)
      (any-of
        (all-of (uk-home) (any-of (at-least (rei-wide) ?n) (at-least (rate rei_3 monitoring_time) ?n)))
        (all-of (uk-laboratory) (any-of (at-least (ahi-wide) ?n) (at-least (rate ahi_3a sleep_time) ?n)))))))
(deffunction uk.mild-or-worse () (events-from 5))
(deffunction uk.moderate-or-severe () (events-from 15))
; U-05
(deffunction uk.option-cpap () (if-applies (british) (found (uk.moderate-or-severe))))
(deffunction uk.option-cpap-mild ()
  (if-applies (british)
    (all-of (found (uk.mild-or-worse)) (negate (found (uk.moderate-or-severe))) (yes impaired_sleep_quality_of_life) (yes symptoms_limit_activities))))

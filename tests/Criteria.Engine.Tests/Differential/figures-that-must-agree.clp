; EV-03, EV-04: whatever counts by the 4 % rule counts by the 3 % rule.
(deffunction agreement.rules-reversed () (less (rate rei_3 monitoring_time) (rate rei_4 monitoring_time)))
(deffunction agreement.monitoring-too-long () (less (num recording_time) (num monitoring_time)))
(deffunction agreement.usable-too-long ()
  (any-of (less (num recording_time) (num usable.airflow)) (less (num recording_time) (num usable.oximetry))))

; A printed index against its count and its time. A time written to the minute stands for half a minute less up to half a minute more.
(deffunction counted (?index ?night)
  (bind ?events (num (sym-cat ?index .events))) (bind ?time (hours-of ?index ?night))
  (if (or (empty ?events) (empty ?time)) then (return (create$)))
  (bind ?x (* 60.0 (nth$ 1 ?events))) (bind ?m (nth$ 1 ?time))
  (if (<= ?m 0) then (return (create$)))
  (if (<= ?m 0.5) then (return (exactly (/ ?x ?m))))
  (create$ (/ ?x (+ ?m 0.5)) (/ ?x (- ?m 0.5)) TRUE))
(deffunction apart (?a ?b) (if (or (empty ?a) (empty ?b)) then unknown else (truth (or (eq (less ?a ?b) met) (eq (less ?b ?a) met)))))
; Only a night whose sleep is staged has a time asleep (EV-08).
(deffunction sleep-is-staged () (any-of (is-word recorder "type I" "type II") (yes channel_eeg)))
(deffunction printed-apart (?index ?night) (apart (num (sym-cat ?index .printed)) (counted ?index ?night)))
(deffunction agreement.printed-rei-4 () (printed-apart rei_4 monitoring_time))
(deffunction agreement.printed-rei-3 () (printed-apart rei_3 monitoring_time))
(deffunction agreement.printed-ahi-4 () (if-applies (sleep-is-staged) (printed-apart ahi_4 sleep_time)))
(deffunction agreement.printed-ahi-3a () (if-applies (sleep-is-staged) (printed-apart ahi_3a sleep_time)))
(deffunction agreement.printed-rdi-arousal-3a () (if-applies (sleep-is-staged) (printed-apart rdi_arousal_3a sleep_time)))
(deffunction agreement.printed-rdi-payer-4 () (printed-apart rdi_payer_4 recording_time))
(deffunction agreement.printed-odi-3 () (printed-apart odi_3 usable.oximetry))
(deffunction agreement.printed-odi-4 () (printed-apart odi_4 usable.oximetry))

; EV-08, EV-09: the denominator of an index is the time that its name says.
(deffunction other-time (?index ?night) (apart (num (sym-cat ?index .time)) (num ?night)))
(deffunction agreement.rei-time () (any-of (other-time rei_4 monitoring_time) (other-time rei_3 monitoring_time)))
(deffunction agreement.ahi-time () (if-applies (sleep-is-staged) (any-of (other-time ahi_4 sleep_time) (other-time ahi_3a sleep_time))))

; Parts and their whole. With a part missing, only a sum that is too large already says something.
(deffunction sum-apart (?sum ?whole)
  (if (or (empty ?sum) (empty ?whole)) then (return unknown))
  (if (eq met (any-of (less ?sum ?whole) (less ?whole ?sum))) then (return met))
  (if (and (exact ?sum) (exact ?whole)) then not-met else unknown))
(deffunction types () (sum-of obstructive_apneas mixed_apneas central_apneas hypopneas))
(deffunction agreement.total () (sum-apart (types) (num total_events)))
; EV-03, EV-04: what counts by the narrow rule counts by the wide one, so fewer than the one or more than the other fits neither.
(deffunction fits-neither (?narrow ?wide)
  (any-of (less (types) (num ?narrow)) (less (num ?wide) (types))
    (all-of (sum-apart (types) (num ?narrow)) (sum-apart (types) (num ?wide)))))
(deffunction agreement.types-rei () (if-applies (is-word recorder "type III" "type IV" "PAT set") (fits-neither rei_4.events rei_3.events)))
(deffunction agreement.types-ahi () (if-applies (is-word recorder "type I" "type II") (fits-neither ahi_4.events ahi_3a.events)))
(deffunction agreement.central-hypopneas () (less (num hypopneas) (num central_hypopneas)))
(deffunction agreement.position-events () (if-applies (yes channel_position) (less (types) (sum-of supine_events other_events))))
(deffunction agreement.position-too-long () (if-applies (yes channel_position) (less (num monitoring_time) (sum-of supine_time other_time))))

; Times of one recording.
(deffunction agreement.pat-too-long () (if-applies (any-of (is-word recorder "PAT set") (yes channel_pat)) (less (num recording_time) (num usable.pat))))
(deffunction agreement.jaw-too-long () (if-applies (yes channel_jaw_muscle) (less (num recording_time) (num usable.jaw_muscle))))
(deffunction agreement.sleep-too-long () (if-applies (sleep-is-staged) (less (num recording_time) (num sleep_time))))
; It ends on the day it began or on the next.
(deffunction agreement.end-date ()
  (bind ?days (days-from (day night.date) (day night.ended)))
  (any-of (below ?days 0) (above ?days 1)))
; HR-07: one report is dated before the night, and none on it or later.
(deffunction days-after-night (?id) (days-from (day night.date) (num (attribute ?id date))))
(deffunction before-night (?id) (below (days-after-night ?id) 0))
(deffunction on-or-after-night (?id) (at-least (days-after-night ?id) 0))
(deffunction agreement.report-before-night ()
  (all-of (some-entry documents (create$ "sleep test report") before-night) (negate (some-entry documents (create$ "sleep test report") on-or-after-night))))

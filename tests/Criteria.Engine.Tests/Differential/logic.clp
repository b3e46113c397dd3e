; Three-valued logic, numbers of which only a range may be known, and documents: all that the re-derived rules need.
; Truths are met, not-met and unknown. A range is (low high high-included), low included; () when nothing is known.
; A case arrives as GIVEN facts and RECORD entries. Asking for a fact that the case was never given is reported.

(defclass GIVEN (is-a USER) (role concrete)
  (slot state) (slot word) (slot low) (slot high) (slot high-in) (multislot list))
(defclass RECORD (is-a USER) (role concrete) (slot list) (slot kind))

(defglobal ?*hair* = 1e-9 ?*closed* = (create$) ?*ids* = (create$))

; ---- a case as it arrives ---------------------------------------------------------------------------------------

(deffunction begin () (do-for-all-instances ((?g GIVEN)) TRUE (send ?g delete))
  (do-for-all-instances ((?r RECORD)) TRUE (send ?r delete)) (bind ?*closed* (create$)) (bind ?*ids* (create$)))
(deffunction unknown-fact (?name) (make-instance ?name of GIVEN (state unknown)))
(deffunction no-such (?name) (make-instance ?name of GIVEN (state does-not-apply)))
(deffunction word-fact (?name ?word) (make-instance ?name of GIVEN (state known) (word ?word)))
(deffunction number-fact (?name ?low ?high ?in)
  (make-instance ?name of GIVEN (state known) (low ?low) (high ?high) (high-in ?in)))
(deffunction list-fact (?name $?list) (make-instance ?name of GIVEN (state known) (list ?list)))
(deffunction record-entry (?id ?list ?kind) (make-instance ?id of RECORD (list ?list) (kind ?kind))
  (bind ?*ids* (create$ ?*ids* ?id)))
(deffunction close-list (?list) (bind ?*closed* (create$ ?*closed* ?list)))

(deffunction given (?name)
  (bind ?it (symbol-to-instance-name ?name))
  (if (not (instance-existp ?it)) then
    (printout t "the case was not given " ?name crlf)
    (unknown-fact ?name))
  ?it)
(deffunction known (?name) (eq (send (given ?name) get-state) known))
(deffunction na (?name) (eq (send (given ?name) get-state) does-not-apply))

; ---- truths -----------------------------------------------------------------------------------------------------

(deffunction truth (?holds) (if ?holds then met else not-met))
(deffunction all-of ($?parts)
  (if (member$ not-met ?parts) then not-met else (if (member$ unknown ?parts) then unknown else met)))
(deffunction any-of ($?parts)
  (if (member$ met ?parts) then met else (if (member$ unknown ?parts) then unknown else not-met)))
(deffunction negate (?part) (if (eq ?part met) then not-met else (if (eq ?part not-met) then met else unknown)))
(deffunction at-least-of (?n $?parts)
  (bind ?met 0) (bind ?open 0)
  (foreach ?p ?parts
    (if (eq ?p met) then (bind ?met (+ ?met 1)))
    (if (eq ?p unknown) then (bind ?open (+ ?open 1))))
  (if (>= ?met ?n) then met else (if (>= (+ ?met ?open) ?n) then unknown else not-met)))

; A yes/no fact that does not apply is a no.
(deffunction yes (?name)
  (if (known ?name) then (truth (eq (send (given ?name) get-word) yes)) else (if (na ?name) then not-met else unknown)))
; Whether somebody wrote a value down.
(deffunction recorded (?name) (if (known ?name) then met else unknown))
(deffunction no (?name) (negate (yes ?name)))
(deffunction any-yes ($?names)
  (bind ?parts (create$)) (foreach ?n ?names (bind ?parts (create$ ?parts (yes ?n)))) (any-of ?parts))
(deffunction all-yes ($?names)
  (bind ?parts (create$)) (foreach ?n ?names (bind ?parts (create$ ?parts (yes ?n)))) (all-of ?parts))
(deffunction map-equal (?word ?words)
  (bind ?parts (create$))
  (foreach ?w ?words (bind ?parts (create$ ?parts (truth (eq (sym-cat ?w) (sym-cat ?word))))))
  ?parts)
(deffunction is-word (?name $?words)
  (if (known ?name) then (any-of (map-equal (send (given ?name) get-word) ?words)) else unknown))
; A limit for men and one for women: what exceeds both needs no answer.
(deffunction by-sex (?male ?female)
  (any-of (all-of (is-word sex male) ?male) (all-of (is-word sex female) ?female) (all-of ?male ?female)))

; ---- numbers ----------------------------------------------------------------------------------------------------

(deffunction num (?name)
  (bind ?g (given ?name))
  (if (known ?name) then (create$ (send ?g get-low) (send ?g get-high) (send ?g get-high-in)) else (create$)))
(deffunction exactly (?n) (create$ ?n ?n TRUE))
(deffunction empty (?r) (= (length$ ?r) 0))
(deffunction exact (?r) (and (not (empty ?r)) (< (abs (- (nth$ 1 ?r) (nth$ 2 ?r))) ?*hair*)))
(deffunction same (?a ?b) (< (abs (- ?a ?b)) ?*hair*))
(deffunction under (?a ?b) (< ?a (- ?b ?*hair*)))

; Whether every, no or some possible value of one range lies below every possible value of another.
(deffunction less (?a ?b)
  (if (or (empty ?a) (empty ?b)) then (return unknown))
  (bind ?high (nth$ 2 ?a)) (bind ?low (nth$ 1 ?b))
  (if (or (under ?high ?low) (and (same ?high ?low) (not (nth$ 3 ?a)))) then (return met))
  (if (under (nth$ 1 ?a) (nth$ 2 ?b)) then unknown else not-met))
(deffunction below (?a ?n) (less ?a (exactly ?n)))
(deffunction at-least-times (?a ?k ?b)
  (if (or (empty ?a) (empty ?b)) then unknown else (negate (less ?a (create$ (* ?k (nth$ 1 ?b)) (* ?k (nth$ 2 ?b)) (nth$ 3 ?b))))))
(deffunction at-least (?a ?n) (negate (below ?a ?n)))
(deffunction above (?a ?n) (less (exactly ?n) ?a))
(deffunction at-most (?a ?n) (negate (above ?a ?n)))
(deffunction equals (?a ?n) (all-of (at-least ?a ?n) (at-most ?a ?n)))
(deffunction scaled (?a ?k) (if (empty ?a) then ?a else (create$ (* ?k (nth$ 1 ?a)) (* ?k (nth$ 2 ?a)) (nth$ 3 ?a))))
(deffunction hull (?a ?b)
  (bind ?in (if (same (nth$ 2 ?a) (nth$ 2 ?b)) then (or (nth$ 3 ?a) (nth$ 3 ?b))
             else (if (> (nth$ 2 ?a) (nth$ 2 ?b)) then (nth$ 3 ?a) else (nth$ 3 ?b))))
  (create$ (min (nth$ 1 ?a) (nth$ 1 ?b)) (max (nth$ 2 ?a) (nth$ 2 ?b)) ?in))
(deffunction holds-value (?r ?v) (eq met (all-of (at-least (exactly ?v) (nth$ 1 ?r))
  (if (nth$ 3 ?r) then (at-most (exactly ?v) (nth$ 2 ?r)) else (below (exactly ?v) (nth$ 2 ?r))))))
(deffunction or-else (?a ?b) (if (empty ?a) then ?b else ?a))

; ---- what reports are worked out from ---------------------------------------------------------------------------

; The denominator of an index: its own, else that of the night.
(deffunction hours-of (?index ?night) (or-else (num (sym-cat ?index .time)) (num ?night)))

; Events over time are exact; a printed figure stands for what rounds to it; if both differ, all between is possible.
(deffunction rate (?index ?night)
  (bind ?events (num (sym-cat ?index .events))) (bind ?printed (num (sym-cat ?index .printed)))
  (bind ?time (hours-of ?index ?night))
  (if (or (empty ?events) (empty ?time)) then (return ?printed))
  (if (<= (nth$ 1 ?time) 0) then (return ?printed))
  (bind ?rate (/ (* 60.0 (nth$ 1 ?events)) (nth$ 1 ?time)))
  (if (empty ?printed) then (return (exactly ?rate)))
  (if (holds-value ?printed ?rate) then (exactly ?rate) else (hull ?printed (exactly ?rate))))
; A printed figure that does not apply, and nothing to work the rate out from: there is no such rate.
(deffunction no-rate (?index ?night) (and (na (sym-cat ?index .printed)) (empty (rate ?index ?night))))
(deffunction over (?events ?time)
  (if (or (empty ?events) (empty ?time)) then (return (create$)))
  (if (or (not (exact ?time)) (<= (nth$ 1 ?time) 0)) then (return (create$)))
  (scaled ?events (/ 60.0 (nth$ 1 ?time))))

; The rate that the payer reads, its events and its time: of the first index at hand (D-05, D-06).
(deffunction payer-index ()
  (if (not (empty (rate rdi_payer_4 recording_time))) then (return rdi_payer_4))
  (if (not (empty (rate ahi_4 sleep_time))) then (return ahi_4))
  (if (not (empty (rate rei_4 monitoring_time))) then (return rei_4))
  none)
(deffunction payer-night () (switch (payer-index)
  (case rdi_payer_4 then recording_time) (case ahi_4 then sleep_time) (default monitoring_time)))
(deffunction payer-rate () (if (eq (payer-index) none) then (create$) else (rate (payer-index) (payer-night))))
(deffunction whole-up (?x) (bind ?i (integer ?x)) (if (> (- ?x ?i) ?*hair*) then (+ ?i 1) else ?i))
(deffunction whole-down (?x) (integer (+ ?x ?*hair*)))
; The whole numbers of events that a rate and a time allow (X-06).
(deffunction events-allowed (?rate ?time)
  (if (or (empty ?rate) (not (exact ?time)) (<= (nth$ 1 ?time) 0)) then (return (create$)))
  (bind ?low (/ (* (nth$ 1 ?rate) (nth$ 1 ?time)) 60.0)) (bind ?high (/ (* (nth$ 2 ?rate) (nth$ 1 ?time)) 60.0))
  (bind ?most (whole-down ?high))
  (if (and (not (nth$ 3 ?rate)) (same ?most ?high)) then (bind ?most (- ?most 1)))
  (if (< ?most (whole-up ?low)) then (create$ (whole-down ?low) (whole-up ?high) TRUE) else (create$ (whole-up ?low) ?most TRUE)))
(deffunction figures-disagree (?index ?night)
  (bind ?printed (num (sym-cat ?index .printed))) (bind ?events (num (sym-cat ?index .events))) (bind ?time (hours-of ?index ?night))
  (if (or (empty ?printed) (empty ?events) (empty ?time)) then (return FALSE))
  (if (<= (nth$ 1 ?time) 0) then (return FALSE))
  (not (holds-value ?printed (/ (* 60.0 (nth$ 1 ?events)) (nth$ 1 ?time)))))
(deffunction payer-events ()
  (bind ?i (payer-index)) (if (eq ?i none) then (return (create$)))
  (bind ?events (num (sym-cat ?i .events))) (bind ?time (hours-of ?i (payer-night)))
  (if (empty ?events) then (return (events-allowed (payer-rate) ?time)))
  (if (figures-disagree ?i (payer-night)) then (hull ?events (events-allowed (num (sym-cat ?i .printed)) ?time)) else ?events))
; The time that a count and a printed rate allow.
(deffunction time-implied (?index)
  (bind ?printed (num (sym-cat ?index .printed))) (bind ?events (num (sym-cat ?index .events)))
  (if (or (empty ?printed) (empty ?events)) then (return (create$)))
  (if (or (<= (nth$ 1 ?printed) 0) (= (nth$ 1 ?events) 0)) then (return (create$)))
  (create$ (/ (* 60.0 (nth$ 1 ?events)) (nth$ 2 ?printed)) (/ (* 60.0 (nth$ 1 ?events)) (nth$ 1 ?printed)) TRUE))
(deffunction payer-hours ()
  (bind ?i (payer-index)) (if (eq ?i none) then (return (create$)))
  (bind ?time (hours-of ?i (payer-night))) (bind ?implied (time-implied ?i))
  (if (empty ?time) then (return ?implied))
  (if (and (figures-disagree ?i (payer-night)) (not (empty ?implied))) then (hull ?time ?implied) else ?time))

; A sum of which a part is missing is at least the rest; a part that does not apply adds nothing.
(deffunction sum-of ($?names)
  (bind ?low 0) (bind ?high 0) (bind ?some FALSE)
  (foreach ?n ?names
    (if (known ?n)
      then (bind ?some TRUE) (bind ?low (+ ?low (nth$ 1 (num ?n)))) (bind ?high (+ ?high (nth$ 2 (num ?n))))
      else (if (not (na ?n)) then (bind ?high 1e6))))
  (if ?some then (create$ ?low ?high TRUE) else (create$)))
; The shortest of several times is no longer than any that is known.
(deffunction shortest ($?names)
  (bind ?high 1e6) (bind ?open FALSE) (bind ?some FALSE)
  (foreach ?n ?names
    (if (known ?n) then (bind ?some TRUE) (bind ?high (min ?high (nth$ 2 (num ?n)))) else (if (not (na ?n)) then (bind ?open TRUE))))
  (if ?some then (create$ (if ?open then 0 else ?high) ?high TRUE) else (create$)))
(deffunction body-mass-index ()
  (bind ?w (num weight)) (bind ?h (num height)) (bind ?written (num bmi))
  (if (or (empty ?w) (empty ?h)) then (return ?written))
  (bind ?bmi (/ (* 10000.0 (nth$ 1 ?w)) (* (nth$ 1 ?h) (nth$ 1 ?h))))
  (if (empty ?written) then (return (exactly ?bmi)))
  (if (holds-value ?written ?bmi) then (exactly ?bmi) else (hull ?written (exactly ?bmi))))

; ---- dates, as day numbers --------------------------------------------------------------------------------------

(deffunction day (?name) (num ?name))
(deffunction days-from (?a ?b)
  (if (or (empty ?a) (empty ?b)) then (create$) else (exactly (- (nth$ 1 ?b) (nth$ 1 ?a)))))

; ---- documents and trials ---------------------------------------------------------------------------------------

(deffunction attribute (?id ?name) (sym-cat ?id / ?name))
(deffunction has (?id ?name) (yes (attribute ?id ?name)))
; Signed: a yes, or the date of the signature.
(deffunction signed (?id)
  (bind ?a (attribute ?id signed))
  (if (and (known ?a) (neq (send (given ?a) get-low) nil)) then met else (yes ?a)))
(deffunction kind-of (?id) (send (symbol-to-instance-name ?id) get-kind))
; Whether some entry of those kinds fits; one that is not listed may exist until the list is closed.
(deffunction some-entry (?list ?kinds ?fits $?more)
  (bind ?parts (create$ (if (member$ ?list ?*closed*) then not-met else unknown)))
  (foreach ?id ?*ids*
    (if (and (eq (send (symbol-to-instance-name ?id) get-list) ?list) (member$ (str-cat (kind-of ?id)) ?kinds))
      then (bind ?parts (create$ ?parts (funcall ?fits ?id (expand$ ?more))))))
  (any-of ?parts))
; The start of the only trial of a kind; nothing when several are listed.
(deffunction only-start (?kind)
  (bind ?found (create$))
  (foreach ?id ?*ids*
    (if (and (eq (send (symbol-to-instance-name ?id) get-list) therapy) (eq (sym-cat (kind-of ?id)) ?kind)) then (bind ?found (create$ ?found ?id))))
  (if (= (length$ ?found) 1) then (num (attribute (nth$ 1 ?found) start)) else (create$)))

; ---- findings ---------------------------------------------------------------------------------------------------

; Not applicable; or open, because that or a question of the source is open; or what the body says.
(deffunction standing (?applies ?question ?body)
  (if (eq ?applies not-met) then (return not-applicable))
  (if (or (eq ?applies unknown) (neq ?question not-met)) then (return unknown))
  ?body)
(deffunction if-applies (?applies ?body) (standing ?applies not-met ?body))
; What a finding lends to another condition: one that does not apply is not met.
(deffunction found (?finding) (if (eq ?finding not-applicable) then not-met else ?finding))
; The places of the lowest and the highest class still possible.
(deffunction classes (?r ?cuts)
  (if (empty ?r) then (return (create$ 1 (+ 1 (length$ ?cuts)))))
  (bind ?low 1) (bind ?high 1)
  (foreach ?c ?cuts
    (if (eq (at-least ?r ?c) met) then (bind ?low (+ ?low 1)))
    (if (neq (at-least ?r ?c) not-met) then (bind ?high (+ ?high 1))))
  (create$ ?low ?high))
; Whether two figures lie in different classes.
(deffunction differ (?a ?b ?cuts)
  (bind ?x (classes ?a ?cuts)) (bind ?y (classes ?b ?cuts))
  (if (or (> (nth$ 1 ?x) (nth$ 2 ?y)) (> (nth$ 1 ?y) (nth$ 2 ?x))) then (return met))
  (if (and (= (nth$ 1 ?x) (nth$ 2 ?x)) (= (nth$ 1 ?y) (nth$ 2 ?y))) then not-met else unknown))
(deffunction class-of (?r ?words ?cuts)
  (bind ?at (classes ?r ?cuts))
  (if (= (nth$ 1 ?at) (nth$ 2 ?at)) then (nth$ (nth$ 1 ?at) ?words) else unknown))
; The class of a single figure; none where the figure does not apply.
(deffunction graded (?name ?words ?cuts) (if (na ?name) then not-applicable else (class-of (num ?name) ?words ?cuts)))
; Points: weight, truth, weight, truth ...
(deffunction points ($?items)
  (bind ?low 0) (bind ?high 0) (bind ?i 1)
  (while (< ?i (length$ ?items))
    (bind ?truth (nth$ (+ ?i 1) ?items))
    (if (eq ?truth met) then (bind ?low (+ ?low (nth$ ?i ?items))))
    (if (neq ?truth not-met) then (bind ?high (+ ?high (nth$ ?i ?items))))
    (bind ?i (+ ?i 2)))
  (create$ ?low ?high TRUE))
(deffunction score (?points ?words ?cuts)
  (bind ?class (if (empty ?words) then (if (exact ?points) then met else unknown) else (class-of ?points ?words ?cuts)))
  (str-cat (if (eq ?class unknown) then "undetermined" else ?class) " " (nth$ 1 ?points)
    (if (exact ?points) then "" else (str-cat " to " (nth$ 2 ?points)))))

(deffunction answer (?case ?id)
  (bind ?says (if (member$ ?id (get-deffunction-list MAIN)) then (funcall ?id) else "left out"))
  (printout t "= " ?case " " ?id " "
    (if (eq ?says not-met) then "not met" else (if (eq ?says unknown) then "undetermined"
     else (if (eq ?says not-applicable) then "not applicable" else ?says))) crlf))

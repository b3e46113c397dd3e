(deffunction supine () (over (num supine_events) (num supine_time)))
(deffunction elsewhere () (over (num other_events) (num other_time)))
(deffunction whole-night () (over (sum-of supine_events other_events) (sum-of supine_time other_time)))
; Of a night that can be graded, with body position recorded.
(deffunction positioned () (all-of (yes channel_position) (adequacy.gradable)))
(deffunction twice () (at-least-times (supine) 2 (elsewhere)))
; PO-01
(deffunction position.twofold () (if-applies (positioned) (twice)))
; PO-02
(deffunction position.supine-only () (if-applies (positioned) (all-of (twice) (below (elsewhere) 5))))
; PO-03
(deffunction position.overall-ratio () (if-applies (positioned) (at-least-times (whole-night) 1.4 (elsewhere))))
; PO-04
(deffunction position.with-minimum-time ()
  (if-applies (positioned)
    (all-of (at-least (whole-night) 15) (twice) (below (elsewhere) 15) (at-least (num supine_time) 20) (at-least (num other_time) 20))))
; PO-05: more than a tenth in each; a chart words failure as less than a tenth, so exactly a tenth is open.
(deffunction tenth () (scaled (sum-of supine_time other_time) 0.1))
(deffunction exactly-tenth (?name) (all-of (at-least-times (num ?name) 1 (tenth)) (at-least-times (tenth) 1 (num ?name))))
(deffunction position.enough-time ()
  (standing (positioned) (any-of (exactly-tenth supine_time) (exactly-tenth other_time))
    (all-of (less (tenth) (num supine_time)) (less (tenth) (num other_time)))))
; PO-06, first match wins. The better position is the one with the lower index.
(deffunction first-class () (found (position.enough-time)))
(deffunction position.class-1 ()
  (if-applies (first-class) (all-of (at-least (whole-night) 5) (any-of (below (supine) 5) (below (elsewhere) 5)))))
; The bands at 30 differ between sources, so exactly 30 is open.
(deffunction second-class () (all-of (first-class) (negate (found (position.class-1)))))
(deffunction position.class-2 ()
  (standing (second-class) (any-of (equals (whole-night) 30) (equals (supine) 30) (equals (elsewhere) 30))
    (any-of (all-of (at-least (whole-night) 15) (any-of (below (supine) 15) (below (elsewhere) 15)))
            (all-of (at-least (whole-night) 30) (any-of (below (supine) 30) (below (elsewhere) 30))))))
; At least 25 % in one line, more in another: exactly 25 % is open.
(deffunction third-class () (all-of (second-class) (negate (found (position.class-2)))))
(deffunction same-rate (?a ?b) (all-of (at-least-times ?a 1 ?b) (at-least-times ?b 1 ?a)))
(deffunction position.class-3 ()
  (bind ?cut (scaled (whole-night) 0.75))
  (standing (third-class)
    (all-of (third-class) (at-least (whole-night) 40) (any-of (same-rate (supine) ?cut) (same-rate (elsewhere) ?cut)))
    (all-of (at-least (whole-night) 40) (any-of (less (supine) ?cut) (less (elsewhere) ?cut)))))

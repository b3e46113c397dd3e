(deffunction supine () (over (num supine_events) (num supine_time)))
(deffunction elsewhere () (over (num other_events) (num other_time)))
(deffunction whole-night () (over (sum-of supine_events other_events) (sum-of supine_time other_time)))
(deffunction at-least-times (?a ?k ?b) (negate (less ?a (scaled ?b ?k))))
; PO-01
(deffunction position.twofold () (at-least-times (supine) 2 (elsewhere)))
; PO-02
(deffunction position.supine-only () (all-of (position.twofold) (below (elsewhere) 5)))
; PO-03
(deffunction position.overall-ratio () (at-least-times (whole-night) 1.4 (elsewhere)))
; PO-04
(deffunction position.with-minimum-time ()
  (all-of (at-least (whole-night) 15) (position.twofold) (below (elsewhere) 15)
    (at-least (num supine_time) 20) (at-least (num other_time) 20)))
; PO-05: more than a tenth in each; a chart words failure as less than a tenth, so exactly a tenth is open.
(deffunction tenth () (scaled (sum-of supine_time other_time) 0.1))
(deffunction exactly-tenth (?name) (all-of (at-least-times (num ?name) 1 (tenth)) (at-least-times (tenth) 1 (num ?name))))
(deffunction position.enough-time ()
  (standing met (any-of (exactly-tenth supine_time) (exactly-tenth other_time))
    (all-of (less (tenth) (num supine_time)) (less (tenth) (num other_time)))))
; PO-06, first match wins. The better position is the one with the lower index.
(deffunction either-position (?supine ?other) (any-of ?supine ?other))
(deffunction position.class-1 ()
  (all-of (position.enough-time) (at-least (whole-night) 5) (any-of (below (supine) 5) (below (elsewhere) 5))))
(deffunction lower-class ()
  (any-of
    (all-of (at-least (whole-night) 15) (any-of (below (supine) 15) (below (elsewhere) 15)))
    (all-of (above (whole-night) 30) (any-of (below (supine) 30) (below (elsewhere) 30)))))
(deffunction position.class-2 ()
  (standing met (any-of (equals (whole-night) 30) (equals (supine) 30) (equals (elsewhere) 30))
    (all-of (position.enough-time) (negate (position.class-1)) (lower-class))))
(deffunction position.class-3 ()
  (bind ?cut (scaled (whole-night) 0.75))
  (standing met
    (all-of (at-least (whole-night) 40)
      (any-of (all-of (at-least-times (supine) 1 ?cut) (at-least-times ?cut 1 (supine)))
              (all-of (at-least-times (elsewhere) 1 ?cut) (at-least-times ?cut 1 (elsewhere)))))
    (all-of (position.enough-time) (negate (position.class-1)) (negate (position.class-2)) (at-least (whole-night) 40)
      (any-of (less (supine) ?cut) (less (elsewhere) ?cut)))))

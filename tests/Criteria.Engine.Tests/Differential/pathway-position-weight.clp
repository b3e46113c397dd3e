; PO-01 to PO-07: any of the definitions brings it up.
(deffunction position.option ()
  (if-applies (all-of (pathway.osa) (yes channel_position)
    (any-of (found (position.supine-only)) (found (position.twofold)) (found (position.overall-ratio))
      (found (position.with-minimum-time)) (found (position.class-1)) (found (position.class-2)))) met))
; BM-01
(deffunction weight.obesity () (at-least (body-mass-index) 30))
(deffunction weight.overweight () (all-of (at-least (body-mass-index) 25) (below (body-mass-index) 30)))
(deffunction weight.option () (if-applies (all-of (pathway.osa) (at-least (body-mass-index) 25)) met))
; SU-03: from 35, where PAP is not tolerated or not accepted
(deffunction weight.option-bariatric ()
  (if-applies (all-of (pathway.osa) (pathway.pap-refused) (at-least (body-mass-index) 35)) met))
; WT-01: moderate to severe in words, 15 per hour and 30 kg/m2 by the trials
(deffunction weight.option-drug ()
  (if-applies (all-of (pathway.osa) (pathway.at-least-moderate) (at-least (body-mass-index) 30)) met))

; DX-09: at least 5 central events an hour, and more than half of all apneas and hypopneas.
(deffunction central () (sum-of central_apneas central_hypopneas))
(deffunction pattern.central-predominant () (if-applies (adequacy.gradable)
  (all-of (at-least (over (central) (num monitoring_time)) 5)
    (less (scaled (sum-of obstructive_apneas mixed_apneas central_apneas hypopneas) 0.5) (central)))))
; DX-14, as the reader reports it
(deffunction pattern.periodic-breathing () (yes periodic_breathing))
; DX-16: five minutes on end. The longest stretch alone decides; without it a shorter total excludes it, and a longer one
; says nothing. A stretch longer than the total decides only what both of them say.
(deffunction pattern.hypoxemia ()
  (bind ?stretch (at-least (num low_saturation_longest) 5)) (bind ?total (at-least (num low_saturation_total) 5))
  (if (eq ?stretch unknown) then (return (all-of ?total unknown)))
  (if (eq (less (num low_saturation_total) (num low_saturation_longest)) met)
    then (if (eq ?stretch ?total) then ?stretch else unknown) else ?stretch))
; OH-01, a step for the obese
(deffunction pattern.bicarbonate-raised () (if-applies (at-least (body-mass-index) 30) (at-least (num bicarbonate) 27)))
; DX-18
(deffunction pattern.obesity-hypoventilation () (all-of (at-least (body-mass-index) 30) (at-least (num awake_paco2) 45)))

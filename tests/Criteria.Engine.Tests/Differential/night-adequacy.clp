; HS-08, HS-09: four hours of usable flow and oximetry, the shorter decides, through the usual sleep period.
(deffunction adequate-time () (shortest usable.airflow usable.oximetry))
(deffunction flow-recorded () (any-yes channel_airflow channel_nasal_pressure channel_thermal_airflow))
; A PAT set has no flow signal, and the text seen does not say what takes its place: open, when all else is adequate.
(deffunction adequacy.night ()
  (standing met
    (all-of (is-word recorder "PAT set") (negate (flow-recorded)) (at-least (num usable.oximetry) 240)
      (at-least (num usable.pat) 240) (yes covers_usual_sleep))
    (all-of (at-least (num usable.airflow) 240) (at-least (num usable.oximetry) 240) (flow-recorded) (yes covers_usual_sleep))))
; Without PAP
(deffunction adequacy.without-pap () (no pap_used))
; HS-20
(deffunction adequacy.inadequate () (any-of (negate (found (adequacy.night))) (no technically_adequate)))
; An index is read from an adequate night without PAP.
(deffunction adequacy.gradable ()
  (all-of (found (adequacy.night)) (adequacy.without-pap) (negate (adequacy.inadequate))))
(deffunction adequacy.five-hours () (at-least (num recording_time) 300))
; HS-30
(deffunction adequacy.automatic-only () (is-word scoring automatic))
(deffunction adequacy.interpretation () (all-yes raw_data_reviewed interpreter_qualified))
(deffunction adequacy.final-statement ()
  (all-of (adequacy.gradable) (negate (adequacy.automatic-only)) (adequacy.interpretation)))
; The lowest saturation cannot exceed the mean.
(deffunction adequacy.saturation-contradiction () (less (num spo2_mean) (num spo2_lowest)))

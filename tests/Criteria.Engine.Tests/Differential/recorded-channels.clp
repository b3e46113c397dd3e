; A fact of the report that is on file; what is not there may still be found.
(deffunction on-file (?name) (if (known ?name) then met else unknown))
(deffunction any-on-file ($?names)
  (bind ?parts (create$)) (foreach ?n ?names (bind ?parts (create$ ?parts (on-file ?n)))) (any-of ?parts))
(deffunction rate-on-file (?index ?night) (if (empty (rate ?index ?night)) then unknown else met))
; The vocabulary's types: type I and II stage sleep, a PAT set records the tone. Other signals that fail have findings of their own.
(deffunction channels.type-contradicted ()
  (any-of (all-of (is-word recorder "type I" "type II") (no channel_eeg)) (all-of (is-word recorder "PAT set") (no channel_pat))))
; HR-04
(deffunction channels.no-position () (no channel_position))
(deffunction channels.position-unsupported ()
  (all-of (no channel_position) (any-on-file supine_events other_events supine_time other_time)))
; EV-02: types are told by effort.
(deffunction channels.no-effort () (all-of (no channel_thoracic_effort) (no channel_abdominal_effort)))
(deffunction typed () (any-on-file obstructive_apneas mixed_apneas central_apneas central_hypopneas))
; Whether a PAT signal may stand in for effort was not seen.
(deffunction channels.typing-unsupported ()
  (standing met (all-of (is-word recorder "PAT set") (yes channel_pat) (channels.no-effort) (typed))
    (all-of (channels.no-effort) (typed))))
; EV-06 to EV-09, DX-08
(deffunction channels.sleep-unsupported ()
  (all-of (no channel_eeg)
    (any-of (on-file sleep_time) (rate-on-file ahi_4 sleep_time) (rate-on-file ahi_3a sleep_time)
      (rate-on-file rdi_arousal_3a sleep_time))))
; EV-06
(deffunction channels.no-oximetry () (no channel_oximetry))
; Section 12: nothing is graded from oximetry alone.
(deffunction channels.oximetry-only ()
  (all-of (yes channel_oximetry) (no channel_airflow) (no channel_nasal_pressure) (no channel_thermal_airflow) (no channel_pat)))
; HS-09: the shorter decides.
(deffunction channels.airflow-decides () (less (num usable.airflow) (num usable.oximetry)))
(deffunction channels.oximetry-decides () (less (num usable.oximetry) (num usable.airflow)))

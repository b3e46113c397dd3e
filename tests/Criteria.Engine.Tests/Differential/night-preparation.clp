; Documents dated no later than the night
(deffunction ordered-in-time (?id $?authors)
  (all-of (is-word (attribute ?id author) (expand$ ?authors))
    (at-most (days-from (num night.date) (num (attribute ?id date))) 0)))
(deffunction ordered-by ($?authors) (some-entry documents (create$ "test order") ordered-in-time ?authors))
; HS-30, HS-31: whether a dentist may order is open.
(deffunction preparation.ordered ()
  (bind ?provider (ordered-by physician "nurse practitioner" "physician assistant" "clinical nurse specialist"))
  (bind ?dentist (ordered-by dentist))
  (standing met (all-of ?dentist (negate ?provider)) (any-of ?provider ?dentist)))
(deffunction preparation.reason () (yes loan.reason_recorded))
; DX-06, with the one more complaint of DX-02; HS-30
(deffunction preparation.no-symptom ()
  (negate (any-yes daytime_sleepiness nonrestorative_sleep fatigue insomnia_complaint insomnia impaired_sleep_quality_of_life gasping_choking
    habitual_snoring witnessed_apneas)))
; QA-04
(deffunction preparation.instructed () (all-yes loan.demonstrated loan.start_instructions))
(deffunction before-loan () (less (num night.date) (num loan.from)))
(deffunction after-loan () (less (num loan.until) (num night.date)))
(deffunction preparation.accepted ()
  (all-of (negate (before-loan)) (negate (after-loan))
    (all-yes loan.recorder_matches loan.identity_confirmed loan.channels_reviewed loan.log_reviewed)))
(deffunction preparation.on-file ()
  (all-of (preparation.ordered) (preparation.reason) (preparation.instructed) (preparation.accepted)))
(deffunction preparation.recorder-differs () (no loan.recorder_matches))
(deffunction preparation.outside-loan () (any-of (before-loan) (after-loan)))
(deffunction preparation.not-confirmed () (no loan.identity_confirmed))
(deffunction preparation.step-missed ()
  (any-of (no loan.reason_recorded) (no loan.demonstrated) (no loan.start_instructions) (no loan.channels_reviewed)
    (no loan.log_reviewed)))
; HS-20
(deffunction preparation.repeat-needed () (yes repeat_needed))

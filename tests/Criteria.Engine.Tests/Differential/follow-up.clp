; That such an entry is there at all.
(deffunction listed (?id) met)
; FU-04: therapy other than PAP that goes on, or that did not work
(deffunction other-therapies ()
  (create$ "oral appliance" "positional therapy" "nerve stimulation" "surgery" "weight loss" "medication"))
(deffunction went-on (?id) (is-word (attribute ?id outcome) "continued"))
(deffunction used (?id) (is-word (attribute ?id outcome) "continued" "not effective"))
(deffunction follow-up.other-therapy () (some-entry therapy (other-therapies) used))
; FU-04, OA-05: a signed report of a test since such a therapy began
(deffunction since-used (?trial ?document)
  (all-of (used ?trial) (above (days-from (num (attribute ?trial start)) (num (attribute ?document date))) 0)))
(deffunction report-on-therapy (?id) (all-of (signed ?id) (some-entry therapy (other-therapies) since-used ?id)))
(deffunction follow-up.test-on-therapy ()
  (if-applies (follow-up.other-therapy) (some-entry documents (create$ "sleep test report") report-on-therapy)))
(deffunction follow-up.option-test ()
  (if-applies (all-of (follow-up.other-therapy) (negate (found (follow-up.test-on-therapy)))) met))
; FU-05, FU-06
(deffunction follow-up.option-pap-test ()
  (if-applies (all-of (some-entry therapy (create$ "PAP") went-on)
    (any-of (all-yes persistent_symptoms good_adherence) (yes significant_weight_change) (yes cardiovascular_change))) met))
(deffunction follow-up.option-laboratory ()
  (if-applies (all-of (some-entry therapy (create$ "PAP" (other-therapies)) used)
    (any-yes follow_up_low_oxygen unexplained_pap_data)) met))
; PA-01: a report on use, which there is only once PAP has begun
(deffunction follow-up.pap-data ()
  (if-applies (some-entry therapy (create$ "PAP") went-on) (some-entry documents (create$ "adherence report") listed)))
; FU-09: same rule, same denominator, same recorder, similar share on the back
(deffunction alternative () (some-entry therapy (other-therapies) listed))
(deffunction follow-up.not-comparable ()
  (if-applies (alternative) (any-of (no same_rule) (no same_denominator) (no same_recorder) (no similar_supine_share))))
(deffunction follow-up.comparable () (if-applies (alternative) (all-yes same_rule same_denominator same_recorder similar_supine_share)))
; both indices at hand, and measured alike
(deffunction with-a-rate () (all-of (alternative) (recorded treated_rate)))
(deffunction follow-up.compared ()
  (if-applies (with-a-rate) (all-of (all-yes same_rule same_denominator same_recorder similar_supine_share) (recorded untreated_rate))))
; FU-01, FU-02
(deffunction half () (scaled (num untreated_rate) 0.5))
(deffunction half-or-more-gone () (negate (less (half) (num treated_rate))))
(deffunction of-two-tests (?body) (if-applies (found (follow-up.comparable)) ?body))
(deffunction follow-up.response () (of-two-tests (half-or-more-gone)))
(deffunction follow-up.success () (of-two-tests (all-of (below (num treated_rate) 10) (less (num treated_rate) (half)))))
(deffunction follow-up.success-other-group () (of-two-tests (all-of (below (num treated_rate) 10) (half-or-more-gone))))
(deffunction follow-up.resolution () (if-applies (with-a-rate) (below (num treated_rate) 5)))

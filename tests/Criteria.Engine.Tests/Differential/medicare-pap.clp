; The shared parts stand in medicare.clp.
(deffunction pap.evaluation-before-test () (evaluation-before-test))
(deffunction pap.evaluation-content () (evaluation-content))
(deffunction pap.listed-condition () (listed-condition))
; D-06
(deffunction other-denominator (?listed)
  (all-of (is-word recorder "type III" "type IV" "PAT set")
    (any-of
      (all-of (first-route) (below (over-recording) 15)
        (negate (all-of (at-least (over-recording) 5) (at-most (over-recording) 14) ?listed)))
      (all-of (second-route ?listed) (below (over-recording) 5)))))
; P-03, P-04; a night without PAP (D-05)
(deffunction pap.sleep-test ()
  (bind ?listed (found (pap.listed-condition)))
  (standing met
    (all-of (no pap_used)
      (any-of (between-routes ?listed) (short-night ?listed) (in-pieces ?listed) (other-denominator ?listed)))
    (all-of (no pap_used) (any-of (first-route) (second-route ?listed)))))
; P-08
(deffunction pap.two-hours () (at-least (payer-hours) 120))
(deffunction pap.covered-test () (covered-test))
; T-09
(deffunction pap.device-cleared () (yes device_cleared))
(deffunction pap.local-test-policy () (yes local_test_policy_met))
(deffunction pap.test-provider () (yes test_provider_qualifies))
(deffunction pap.test-order () (order-before-test))
(deffunction pap.test-report () (test-report))
(deffunction pap.no-supplier-part () (no-supplier-part))
; P-10
(deffunction pap.instruction () (some-entry documents (create$ "instruction record") a-record))
(deffunction taught-before-use (?id)
  (at-least (days-from (num (attribute ?id date)) (only-start PAP)) 0))
(deffunction pap.instruction-before-use () (if-applies (some-entry therapy (create$ "PAP") a-record) (some-entry documents (create$ "instruction record") taught-before-use)))
; P-17
(deffunction pap.initial-coverage ()
  (all-of (found (pap.evaluation-before-test)) (found (pap.sleep-test)) (pap.covered-test) (pap.device-cleared) (pap.local-test-policy)
    (pap.test-provider) (found (pap.test-order)) (pap.test-report) (pap.no-supplier-part) (pap.instruction)))

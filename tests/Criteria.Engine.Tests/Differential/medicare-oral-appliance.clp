; The shared parts stand in medicare.clp.
(deffunction oral.evaluation-before-test () (evaluation-before-test))
(deffunction oral.evaluation-content () (evaluation-content))
(deffunction oral.listed-condition () (listed-condition))
; A-04: PAP not tolerated, or contraindicated by the treating practitioner.
(deffunction pap-not-tolerated (?id) (is-word (attribute ?id outcome) "not tolerated"))
(deffunction oral.pap-unsuitable ()
  (any-of (some-entry therapy (create$ "PAP") pap-not-tolerated) (yes pap_contraindicated)))
; A-02 to A-04. Above 30 without the third route's condition the first route passes as printed, which makes the third
; pointless (X-16); and whether the third needs an event count is not said.
(deffunction third-route () (all-of (above (payer-rate) 30) (found (oral.pap-unsuitable))))
(deffunction other-denominator (?listed)
  (all-of (is-word recorder "type III" "type IV" "PAT set")
    (any-of
      (all-of (first-route) (below (over-recording) 15)
        (negate (all-of (at-least (over-recording) 5) (at-most (over-recording) 14) ?listed)))
      (all-of (second-route ?listed) (below (over-recording) 5)))))
(deffunction oral.sleep-test ()
  (bind ?listed (found (oral.listed-condition)))
  (standing met
    (all-of (no pap_used)
      (any-of (between-routes ?listed) (all-of (short-night ?listed) (negate (third-route))) (in-pieces ?listed) (other-denominator ?listed)
        (all-of (above (payer-rate) 30) (first-route) (negate (oral.pap-unsuitable)))
        (all-of (third-route) (below (payer-events) 30))))
    (all-of (no pap_used) (any-of (first-route) (second-route ?listed) (third-route)))))
(deffunction oral.two-hours () (at-least (payer-hours) 120))
(deffunction oral.covered-test () (covered-test))
(deffunction oral.device-cleared () (yes device_cleared))
(deffunction oral.local-test-policy () (yes local_test_policy_met))
(deffunction oral.test-provider () (yes test_provider_qualifies))
(deffunction oral.test-order () (order-before-test))
(deffunction oral.test-report () (test-report))
; T-12: a dentist who is enrolled as a supplier is one.
(deffunction oral.no-supplier-part ()
  (any-of (all-of (no supplier_handled_test) (any-of (no dentist_handled_test) (no appliance_dentist_enrolled))) (yes supplier_is_certified_hospital) (is-word recorder "type I")))
; A-06: ordered by the treating practitioner after review of the report.
; So the night, the report, its review and the order follow each other.
(deffunction ordered-since (?id ?day)
  (all-of (practitioner ?id) (signed ?id) (is-word (attribute ?id item) "oral appliance")
    (at-least (days-from (num ?day) (num (attribute ?id date))) 0)))
(deffunction report-before-review (?id) (at-least (days-from (num (attribute ?id date)) (num report_reviewed_on)) 0))
(deffunction oral.order ()
  (all-of (some-entry documents (create$ "order") ordered-since night.date) (some-entry documents (create$ "order") ordered-since report_reviewed_on)
    (some-entry documents (create$ "sleep test report") report-before-review) (at-least (days-from (num night.date) (num report_reviewed_on)) 0)))
; A-07
(deffunction oral.dentist () (all-yes appliance_provided_by_dentist appliance_billed_by_dentist))
(deffunction oral.dentist-enrolled () (yes appliance_dentist_enrolled))
; A-08, A-11, A-12
(deffunction oral.procedure-code () (is-word appliance_code E0486))
; A-09
(deffunction oral.device-features ()
  (all-yes appliance_custom_advancement appliance_fixed_hinge appliance_beyond_front_teeth appliance_fine_adjustment appliance_keeps_setting
    appliance_holds_jaw appliance_no_later_visits))
; A-10
(deffunction oral.coding-verified () (yes appliance_listed))
; A-13: PAP that Medicare paid within five years before the service.
(deffunction paid-lately (?id)
  (all-of (has ?id paid_by_medicare)
    (at-least (days-from (num (attribute ?id last_paid)) (num coverage.service_date)) 0)
    (at-most (days-from (num (attribute ?id last_paid)) (num coverage.service_date)) 1826)))
(deffunction oral.same-or-similar () (some-entry therapy (create$ "PAP") paid-lately))
(deffunction oral.coverage ()
  (all-of (found (oral.evaluation-before-test)) (found (oral.sleep-test)) (oral.covered-test) (oral.device-cleared) (oral.local-test-policy)
    (oral.test-provider) (found (oral.test-order)) (oral.test-report) (oral.no-supplier-part) (oral.order) (oral.dentist)
    (oral.dentist-enrolled) (oral.procedure-code) (oral.device-features) (oral.coding-verified)))

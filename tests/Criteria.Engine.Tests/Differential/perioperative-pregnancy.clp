; PE-01: before an operation only. Known disease is a flag; without it a screening score, or putting the operation off, is
; laid out with what speaks for and against.
(deffunction perioperative.known () (if-applies (yes surgery_planned) (pathway.osa)))
(deffunction not-known-before-operation () (all-of (yes surgery_planned) (negate (pathway.osa))))
(deffunction perioperative.option-screening () (if-applies (not-known-before-operation) met))
(deffunction perioperative.no-ground-for-delay () (all-of (no uncontrolled_systemic_disease) (no gas_exchange_trouble)))
(deffunction perioperative.option-delay () (if-applies (not-known-before-operation) met))
; PR-01: obesity, high blood pressure or diabetes in pregnancy; whoever has symptoms is referred.
(deffunction pregnancy.screening ()
  (if-applies (yes pregnant)
    (any-of (at-least (body-mass-index) 30) (yes hypertension) (any-yes type_2_diabetes other_diabetes))))
(deffunction pregnancy.option-test () (if-applies (all-of (found (pregnancy.screening)) (osa.symptom) (no home_test_done)) met))

; SEV-02 to SEV-04 with the boundary at 30 set to severe. An index is graded from a night that can be graded; an REI
; belongs to a home recorder, an AHI to staged sleep.
(deffunction home-recorder () (is-word recorder "type III" "type IV" "PAT set"))
(deffunction staged-sleep () (any-of (is-word recorder "type I" "type II") (yes channel_eeg)))
(deffunction severity-of (?index ?night ?recorder)
  (if (no-rate ?index ?night) then not-applicable else
    (if-applies (all-of (adequacy.gradable) ?recorder)
      (class-of (rate ?index ?night) (create$ "below 5" mild moderate severe) (create$ 5 15 30)))))
(deffunction severity.rei-4 () (severity-of rei_4 monitoring_time (home-recorder)))
(deffunction severity.rei-3 () (severity-of rei_3 monitoring_time (home-recorder)))
(deffunction severity.ahi-4 () (severity-of ahi_4 sleep_time (staged-sleep)))
(deffunction severity.ahi-3a () (severity-of ahi_3a sleep_time (staged-sleep)))
; CV-01: both rules at hand, and another class by each.
(deffunction rules-differ (?a ?b ?night)
  (if (or (no-rate ?a ?night) (no-rate ?b ?night)) then not-met else (differ (rate ?a ?night) (rate ?b ?night) (create$ 5 15 30))))
(deffunction severity.rules-disagree ()
  (if-applies (all-of (adequacy.gradable) (home-recorder)) (rules-differ rei_4 rei_3 monitoring_time)))
(deffunction severity.rules-disagree-ahi ()
  (if-applies (all-of (adequacy.gradable) (staged-sleep)) (rules-differ ahi_4 ahi_3a sleep_time)))
; EV-02, DX-11
(deffunction severity.not-obstructive () (if-applies (adequacy.gradable) (no predominantly_obstructive)))
; HS-21: an adequate home night below 5. By which rule is not said, so it is open when the two rules part at 5.
(deffunction severity.negative ()
  (standing (all-of (adequacy.gradable) (home-recorder))
    (all-of (if (no-rate rei_4 monitoring_time) then not-met else (below (rate rei_4 monitoring_time) 5)) (at-least (rate rei_3 monitoring_time) 5))
    (below (or-else (rate rei_4 monitoring_time) (rate rei_3 monitoring_time)) 5)))
; HS-20
(deffunction severity.option-next-test ()
  (any-of (found (severity.negative)) (adequacy.inadequate) (yes called_inconclusive)))

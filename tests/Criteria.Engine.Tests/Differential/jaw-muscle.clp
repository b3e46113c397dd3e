; Jaw-muscle activity: rates are per hour of usable jaw channel; per hour of sleep only where sleep was staged.
(deffunction jaw-rate () (over (num jaw_episodes) (num usable.jaw_muscle)))
(deffunction jaw-sleep-rate () (over (num jaw_episodes) (num sleep_time)))
(deffunction burst-sleep-rate () (over (num jaw_bursts) (num sleep_time)))
; BX-12: described with what tells one recorder from another, whatever the figure.
(deffunction jaw.episodes ()
  (if-applies (yes channel_jaw_muscle)
    (all-of (if (empty (jaw-rate)) then unknown else met) (recorded jaw_muscle) (recorded jaw_sides) (recorded jaw_sound_picture)
      (recorded jaw_burst_rule))))
; BX-09
(deffunction jaw.muscle-alone () (if-applies (yes channel_jaw_muscle) (is-word jaw_sound_picture none)))
; BX-08: 5.5 in one study of a single masseter with its own burst rule; the operator was not seen.
(deffunction jaw.above-study-cut ()
  (standing (all-of (yes channel_jaw_muscle) (is-word jaw_muscle masseter) (is-word jaw_sides "one side") (is-word jaw_burst_rule "twice baseline for 0.25 s"))
    (equals (jaw-rate) 5.5) (above (jaw-rate) 5.5)))
; BX-01, per hour of staged sleep and with the sound of grinding. Whether exactly 25 bursts are enough is not said.
(deffunction with-sleep-and-sound () (all-of (yes channel_jaw_muscle) (yes channel_eeg) (is-word jaw_sound_picture sound "sound and picture")))
(deffunction six-bursts () (less (scaled (num jaw_episodes) 6) (num jaw_bursts)))
(deffunction jaw.criteria-1996 ()
  (standing (with-sleep-and-sound)
    (all-of (with-sleep-and-sound) (above (jaw-sleep-rate) 4) (at-least (num jaw_grinding_episodes) 2) (negate (six-bursts))
      (equals (burst-sleep-rate) 25))
    (all-of (above (jaw-sleep-rate) 4) (at-least (num jaw_grinding_episodes) 2) (any-of (six-bursts) (above (burst-sleep-rate) 25)))))
; BX-02: some say from 2, some above 2.
(deffunction jaw.research-band ()
  (standing (with-sleep-and-sound) (all-of (with-sleep-and-sound) (equals (jaw-sleep-rate) 2))
    (class-of (jaw-sleep-rate) (create$ "below the bands" "low frequency" "high frequency") (create$ 2 4))))
; BX-06
(deffunction reported () (any-yes grinding_reported clenching_reported))
(deffunction bruxism.by-self-report () (reported))
(deffunction bruxism.by-examination () (yes inspection_positive))
(deffunction device-positive () (yes jaw_called_positive))
; BX-12: without sleep, or without sound and picture, a positive channel is open.
(deffunction bruxism.by-device ()
  (standing (yes channel_jaw_muscle)
    (all-of (yes channel_jaw_muscle) (any-of (no channel_eeg) (is-word jaw_sound_picture none)) (device-positive))
    (device-positive)))
; BX-04, for a night with a jaw channel
(deffunction bruxism.definite-2018 () (if-applies (yes channel_jaw_muscle) (found (bruxism.by-device))))
(deffunction bruxism.probable-2018 ()
  (if-applies (yes channel_jaw_muscle) (all-of (yes inspection_positive) (negate (found (bruxism.by-device))))))
(deffunction bruxism.possible-2018 ()
  (if-applies (yes channel_jaw_muscle) (all-of (reported) (no inspection_positive) (negate (found (bruxism.by-device))))))
; BX-03
(deffunction bruxism.probable-2013 () (all-of (reported) (yes inspection_positive)))
(deffunction bruxism.definite-2013 () (all-of (reported) (yes inspection_positive) (found (bruxism.by-device)) (is-word recorder "type I" "type II")))
; BX-07
(deffunction bruxism.clinical-criteria ()
  (all-of (reported) (any-yes tooth_wear morning_jaw_pain temporal_headache jaw_locking)))
; BX-04, BX-06, BX-07: any term or sign brings it up.
(deffunction jaw.option-dental ()
  (if-applies (any-of (reported) (yes inspection_positive) (found (bruxism.by-device)) (any-yes tooth_wear morning_jaw_pain)) met))

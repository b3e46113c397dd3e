; What is on file; what is not there may still be found.
(deffunction on-file (?name) (if (known ?name) then met else unknown))
(deffunction per-hour-of-signal () (over (num jaw_episodes) (num usable.jaw_muscle)))
(deffunction per-hour-of-sleep (?events) (over (num ?events) (num sleep_time)))
; BX-12 and the list of section 10: the figure, and how it was recorded.
(deffunction jaw.episodes ()
  (if-applies (yes channel_jaw_muscle)
    (all-of (if (empty (per-hour-of-signal)) then unknown else met)
      (on-file jaw_muscle) (on-file jaw_sides) (on-file jaw_sound_picture) (on-file jaw_burst_rule))))
; BX-09
(deffunction jaw.muscle-alone () (if-applies (yes channel_jaw_muscle) (is-word jaw_sound_picture none)))
; BX-08: whether the cut itself counts was not seen.
(deffunction jaw.above-study-cut ()
  (standing
    (all-of (yes channel_jaw_muscle) (is-word jaw_muscle masseter) (is-word jaw_sides "one side")
      (is-word jaw_burst_rule "twice baseline for 0.25 s"))
    (equals (per-hour-of-signal) 5.5)
    (above (per-hour-of-signal) 5.5)))
; Laboratory recordings with sound
(deffunction laboratory-with-sound ()
  (all-of (yes channel_jaw_muscle) (yes channel_eeg) (is-word jaw_sound_picture sound "sound and picture")))
; BX-01: whether exactly 25 bursts are enough was not seen.
(deffunction jaw.criteria-1996 ()
  (bind ?many (less (scaled (num jaw_episodes) 6) (num jaw_bursts)))
  (bind ?common (all-of (above (per-hour-of-sleep jaw_episodes) 4) (at-least (num jaw_grinding_episodes) 2)))
  (standing (laboratory-with-sound)
    (all-of ?common (negate ?many) (equals (per-hour-of-sleep jaw_bursts) 25))
    (all-of ?common (any-of ?many (at-least (per-hour-of-sleep jaw_bursts) 25)))))
; BX-02: from 2, or above 2
(deffunction jaw.research-band ()
  (bind ?rate (per-hour-of-sleep jaw_episodes))
  (standing (laboratory-with-sound) (equals ?rate 2)
    (class-of ?rate (create$ "below the bands" "low frequency" "high frequency") (create$ 2 4))))
; BX-06
(deffunction bruxism.by-self-report () (any-yes grinding_reported clenching_reported))
(deffunction bruxism.by-examination () (yes inspection_positive))
; BX-04, BX-03, BX-12: whether a recording without EEG, or without sound and picture, makes it so is open.
(deffunction bruxism.by-device ()
  (standing (yes channel_jaw_muscle)
    (all-of (yes jaw_called_positive) (any-of (no channel_eeg) (is-word jaw_sound_picture none)))
    (yes jaw_called_positive)))
; BX-04: the highest grade that is reached.
(deffunction bruxism.definite-2018 () (if-applies (yes channel_jaw_muscle) (found (bruxism.by-device))))
(deffunction bruxism.probable-2018 ()
  (if-applies (yes channel_jaw_muscle) (all-of (bruxism.by-examination) (negate (found (bruxism.by-device))))))
(deffunction bruxism.possible-2018 ()
  (if-applies (yes channel_jaw_muscle)
    (all-of (bruxism.by-self-report) (negate (bruxism.by-examination)) (negate (found (bruxism.by-device))))))
; BX-03: signs on top of the self-report, the laboratory on top of both.
(deffunction bruxism.probable-2013 () (all-of (bruxism.by-self-report) (bruxism.by-examination)))
(deffunction bruxism.definite-2013 ()
  (all-of (bruxism.probable-2013) (is-word recorder "type I" "type II") (found (bruxism.by-device))))
; BX-07
(deffunction bruxism.clinical-criteria ()
  (all-of (any-yes grinding_reported clenching_reported) (any-yes tooth_wear morning_jaw_pain temporal_headache jaw_locking)))

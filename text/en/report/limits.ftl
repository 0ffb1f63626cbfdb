## limits.rs

this-trial-is-invented-its-photographs = This trial is invented: its photographs were drawn by a program to show how a trial works. It says nothing about any real dye, fibre or treatment.
colours-were-read-from-photographs = Colours were read from photographs beside a colour chart, not with a spectrophotometer. They hold for daylight (D65) and the 10 degree observer; two cloths that match there may differ under a lamp.
readings-from-elsewhere-are-given = Readings from elsewhere are given as they were handed in. A change is only ever taken between readings of one source and one light, and each verdict says on which it rests.
the-intervals-cover-the-spread-between = The intervals cover the spread between the pieces of this trial. They do not cover another dye lot, water, fibre, machine or pair of hands: repeating the trial does.
known-when-the-trial-was-planned = Known when the trial was planned: { $sentence } { $consequence }
noted-while-it-was-dyed-the-verdict = Noted while it was dyed ({ $title }): { $sentence } The verdict holds for what was done, not for what was planned.
washing-is-not-light-sweat-or-rubbing = Washing is not light, sweat or rubbing: a cloth that lasts here may still fail there.
every-test-piece-of-went-through-load = Every test piece of { $name } went through load { $load }, and no other arm did: whatever that load did explains a difference as well as the treatment does.

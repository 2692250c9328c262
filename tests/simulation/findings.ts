/** What was tried on the tuning seeds, and what came of it: kept as text, as the variants are not part of the app. */
export const FINDINGS = `## What was tried

On seed 7 with 6 to 12 students a family and kind, so differences of a few per cent may be noise, the more as those who do
not get there count as 400 days. Three figures are those of the families skill, traces, components. Days are those of the
uneven student with 12 minutes. The changes were tried one after another, so compare only within a line.

Kept, as it helps in every family:

| change | what it brings |
|---|---|
| the shortfall of an item squared, not as it is | a power of 1.5: 227, 307, 285 days become 218, 291, 282 (12 students, first model); from 1.5 to 2: 190, 270, 260 become 181, 255, 253 (8 students, later model); 3 gives 178, 254, 255, and fewer items ready on day 120 |
| the spread of a student's own runs | error of the next run 0.077, 0.014, 0.134 becomes 0.041, 0.011, 0.110 |
| a surprising run is in part taken for a slip | in the family with slips 0.110 becomes 0.057, and 0.045 at target 0.019; the others as before |
| a student's own use of the levels of fluency | next run 0.028, 0.011, 0.052 becomes 0.014, 0.008, 0.030; at target 0.019, 0.070, 0.025 becomes 0.017, 0.058, 0.016 |
| estimates that drift less from day to day | next run 0.039, 0.007, 0.064 becomes 0.031, 0.008, 0.055; days as before |

Kept as rules, which cost nothing that can be told from noise: near twins apart (TWIN) and hands in turn (HANDS). Days with
both 185, 259, 248; without HANDS 184, 258, 251; without both 183, 259, 252. Nothing new after a break (RETURN) was on in all
three and not measured by itself; nothing new before the date (EVE) was not measured, as these students have no date.

Not kept, as it did not help:

| change | what came of it |
|---|---|
| a student's own speed of gaining and of fading, as two more effects | days within 1 %; next run 0.041, 0.011, 0.110 becomes 0.035, 0.013, 0.111 |
| less spread of items at the start | nothing |
| look-back every 10th or 20th entry instead of every 5th | 1 to 3 % fewer days; kept at every 5th, as it is an insurance that these families do not need |
| rounds of three | nothing, with 5 minutes; not tried with 12 |
| value measured 10 days ahead instead of 28; three runs of an item a day instead of six | nothing |
| tempo where six or eight of ten come out even, not seven | 192, 265, 255 and 179, 255, 250 days against 185, 259, 248: flat |
| a beginner with both hands, or with hands together, from the first day (12 minutes) | 168, 250, 267 days become 165, 249, 267 and 164, 242, 265; the gate is cheap, and kept for the sake of the hands |
| a forecast by the model's own gains carried on | up to twice too late and worse with time. What the slowest tenth has gained lately misses less on the tuning seed, but is too early on the reported one, and its interval is too narrow: see above |

Short days: with 5 minutes the uniform student needs 244, 324, 364 days with the app and 287, 354, 378 with rotation and
look-back; the uneven one 347, 387, 387 and 396, 400, 400, so hardly anyone gets there by rotation.

Not studied: an adaptive look-back, a teacher's mark that weighs more, black notes joining later, contrary motion as the
target, two sittings in a day, whole rounds cold in the last week. A programme holds one date; several need several programmes.`;

// What to try next, in words: the change, why, what to expect, what would prove it wrong, the way back.
#pragma once

#include <QString>
#include <QStringList>

#include "geometry/trials/launch_trials.h"
#include "geometry/trials/power_map.h"

namespace bolthole {

/// What to do, with what it was: "Front rebound two clicks firmer, 1 → 3", "Launch at 2600 rpm, before 2400".
[[nodiscard]] QString trialTitle(const PaddockChange& change, const Car& car, Units units);
/// The same as short as a row has room for: "Front rebound 1 → 3".
[[nodiscard]] QString trialName(const PaddockChange& change, const Car& car, Units units);

/// Why, of the two launches: "The nose stops 0.09 s later, and the rear tires keep 180 lbf more." Where
/// nothing stands out, says so.
[[nodiscard]] QString trialWhy(const LaunchTrial& trial, Units units);
/// "60 ft −0.012 s, ± 0.010 s"; with what is known of the least rear load and of topping out after it.
[[nodiscard]] QString trialExpected(const LaunchTrial& trial, Units units);
/// "−0.012 ± 0.010", s; a dash where there is none.
[[nodiscard]] QString trialGain(const LaunchTrial& trial);
/// The change alone: "−0.028".
[[nodiscard]] QString trialChange(const LaunchTrial& trial);
/// "helps in 88 of 100".
[[nodiscard]] QString trialChance(const LaunchTrial& trial);
/// "no bolts, about 2 minutes".
[[nodiscard]] QString trialEffort(const PaddockChange& change);
/// What would show that it is wrong, and to go back then.
[[nodiscard]] QString trialProof(const LaunchTrial& trial);
/// "The way back: click 1."
[[nodiscard]] QString trialUndo(const PaddockChange& change, const Car& car, Units units);

/// Why there is nothing to try: what is missing, or that the car as it stands does not get to 60 ft; empty
/// where there is something.
[[nodiscard]] QString noTrialsWords(const std::vector<MissingInput>& missing, bool getsThere);
/// What the estimates leave out, and where to try them.
[[nodiscard]] QString trialCaution();

/// The next thing to try, a sentence a line, for paper. Empty where there is none.
[[nodiscard]] QStringList nextToTry(const LaunchTrials& trials, const Car& car, Units units);

}  // namespace bolthole

// What happens in a launch, in words.
#pragma once

#include <QString>
#include <optional>

#include "widgets/pages/launch/launch_film.h"

namespace bolthole {

/// "0.28 s".
[[nodiscard]] QString secondsText(double seconds);

/// What happens then: "nose tops out", "shock reaches its stop". Empty for what nobody needs to be told.
[[nodiscard]] QString eventWords(const LaunchFilm& film, const LaunchEvent& event);

/// Whether it is one of the few that a person looks for: marked in the curves and flagged in the picture.
[[nodiscard]] bool isMarked(LaunchEventKind kind);

/// The first time that happens in a film, s.
[[nodiscard]] std::optional<double> firstTime(const LaunchFilm& film, LaunchEventKind kind);

/// How a launch ended where it did not run its 60 ft, in a sentence with the time; empty where it did.
[[nodiscard]] QString endWords(const LaunchFilm& film, Units units);

}  // namespace bolthole

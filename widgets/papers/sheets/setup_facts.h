// What a setup is, in words: for the top of the test-day sheet, the setup card, and the clipboard.
#pragma once

#include <QDate>
#include <QString>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/units/text.h"

namespace bolthole {

/// Something and what it is set to or reads; `value` is never empty.
struct SetupFact {
    QString name;
    QString value;
};

/// A link of the setup: which holes it is bolted to and how long it is.
struct SetupLink {
    QString name;
    QString chassis;  ///< name of the hole in use; a dash where the bracket has one only
    QString axle;
    QString length;  ///< center to center, with unit; empty for what is no rod
};

/// A setup.
struct SetupFacts {
    QString car;
    QString setup;     ///< what it was kept as; empty: it was not
    QString starting;  ///< which of its numbers nobody measured, startingHeading(); empty: none
    std::vector<SetupLink> links;
    std::vector<SetupFact> clicks;
    std::vector<SetupFact> pressures;  ///< as entered for the launch, else of the last pass that has any
    QString pressuresFrom;             ///< which of the two, in words; empty without pressures
    std::vector<SetupFact> weights;    ///< the four corners as weighed, and all of them
    std::vector<SetupFact> launch;
    std::vector<SetupFact> figures;  ///< at ride, with ± where it is known
};

/// Gathers them. The car must have passed findFaults(). Without `figures` nothing is solved.
[[nodiscard]] SetupFacts setupFactsOf(const Car& car, NumberStyle style, bool figures);

/// The setup as a dozen lines of text, for a friend. `date`: of today.
[[nodiscard]] QString setupText(const SetupFacts& facts, QDate date);

}  // namespace bolthole

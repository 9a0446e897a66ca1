// What every link carries: the worst in travel and where, at ride, and what of its rating that takes.
#pragma once

#include "geometry/statics/launch_case.h"
#include "widgets/kit/read_table.h"

namespace bolthole {

/// A row a joint, largest load first.
class LinkLoadTable : public ReadTable {
    Q_OBJECT
  public:
    enum Column {
        kJoint,
        kTension,
        kTensionAt,
        kCompression,
        kCompressionAt,
        kAtRide,
        kOfRating,
        kCertainty
    };
    explicit LinkLoadTable(QWidget* parent = nullptr);

    void showLoads(const Car& car, const LinkFigures& figures, double factor, Units units);

  private:
    void showJoint(int row, const Car& car, const JointLoads& joint, Units units);
};

}  // namespace bolthole

// What a newly added spring, shock, stop or strap starts from.
#pragma once

#include <vector>

#include "geometry/edits/edit.h"

namespace bolthole {

/// A part of that kind, one on each side, where such parts usually stand: mounts over and beside the axle
/// tube by the car's rear tire radius and track (half the wheelbase where no track is known), in
/// whole quarter inches or 5 mm. Common practice, no source: a place to start measuring from. Rates and
/// lengths stay empty: nobody can guess those. Its name is one the car does not have yet.
[[nodiscard]] SuspensionPart startingSpring(const Car& car, PartKind kind);

/// Numbers that were put in as starting numbers and are neither changed nor said to be right since.
class StartingNumbers {
  public:
    /// Watches the mounts of the last part of `car`, which was just added.
    void watchLast(const Car& car);
    /// Somebody said that the number is right as it stands.
    void confirm(const FieldId& id);
    /// A part was taken out; those behind it move up.
    void removed(int item);
    /// Forgets what was changed.
    void follow(const Car& car);
    /// Those of one part that nobody measured yet.
    [[nodiscard]] std::vector<FieldId> of(int item) const;

  private:
    struct Number {
        FieldId id;
        double start = 0;
    };
    std::vector<Number> numbers_;
};

}  // namespace bolthole

#include "geometry/passes/take_passes.h"

#include "geometry/car/pass_fields.h"
#include "geometry/units/say.h"

namespace bolthole {

std::string takePasses(Car& car, const std::vector<Pass>& passes) {
    if (passes.size() > kMaxPasses) {
        return say("a car file holds at most %1 passes", kMaxPasses);
    }
    for (const Pass& pass : passes) {
        const PassFault fault = findFault(pass, car.kept.size());
        if (!fault.reason.empty()) {
            return say("%1: %2: %3", passWords(pass), fault.path, fault.reason);
        }
    }
    car.passes = passes;
    return {};
}

std::string describeTaken(const Car& before, const std::vector<Pass>& passes) {
    if (passes.size() <= before.passes.size()) {
        return say("Take in passes");
    }
    const std::size_t more = passes.size() - before.passes.size();
    return more == 1 ? say("Take in 1 pass") : say("Take in %n passes", Count(more));
}

}  // namespace bolthole

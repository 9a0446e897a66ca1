#include "geometry/passes/take_passes.h"

#include "geometry/car/pass_fields.h"

namespace bolthole {

std::string takePasses(Car& car, const std::vector<Pass>& passes) {
    if (passes.size() > kMaxPasses) {
        return "a car file holds at most " + std::to_string(kMaxPasses) + " passes";
    }
    for (const Pass& pass : passes) {
        const PassFault fault = findFault(pass, car.kept.size());
        if (!fault.reason.empty()) {
            return passWords(pass) + ": " + fault.path + ": " + fault.reason;
        }
    }
    car.passes = passes;
    return {};
}

std::string describeTaken(const Car& before, const std::vector<Pass>& passes) {
    if (passes.size() <= before.passes.size()) {
        return "Take in passes";
    }
    const std::size_t more = passes.size() - before.passes.size();
    return "Take in " + std::to_string(more) + (more == 1 ? " pass" : " passes");
}

}  // namespace bolthole

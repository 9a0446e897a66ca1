#include "tests/support/json_reference.h"

#include <nlohmann/json.hpp>

namespace bolthole {

std::size_t valuesInJson(const std::string& bytes) {
    return nlohmann::ordered_json::parse(bytes).size();
}

}  // namespace bolthole

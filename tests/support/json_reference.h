// The JSON library by itself, compiled as the program is: what the car file's reader is held against.
#pragma once

#include <cstddef>
#include <string>

namespace bolthole {

/// How many values the outermost array or object holds; the whole text is parsed for it. Throws on bad JSON.
[[nodiscard]] std::size_t valuesInJson(const std::string& bytes);

}  // namespace bolthole

#include "app/carfile/car_file.h"

#include <array>
#include <cerrno>
#include <charconv>
#include <cstdio>
#include <cstring>
#include <memory>

#include "app/carfile/car_file_shape.h"
#include "geometry/car/faults.h"
#include "geometry/units/say.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

constexpr std::size_t kLongestName = 60;  // bytes of a name in a message

using Json = nlohmann::ordered_json;

std::string tooLarge() {
    return say("larger than %1 bytes", kMaxFileBytes);
}

ReadResult refused(std::string reason) {
    return {std::nullopt, {"", std::move(reason)}};
}

/// The text under `key`, or that number of the list where it has none: "'lower'", "3".
std::string nameIn(const Json& item, std::size_t index) {
    const auto name = item.is_object() ? item.find("name") : item.end();
    const bool isNamed = item.is_object() && name != item.end() && name->is_string() &&
                         !isBlank(name->get_ref<const std::string&>());
    return isNamed ? "'" + name->get<std::string>().substr(0, kLongestName) + "'" : std::to_string(index + 1);
}

/// What stands at `list[index]` of the path from `at` on; null where nothing does. Moves `at` past it.
const Json* itemAt(const Json& from, std::string_view list, const std::string& path, std::size_t& at,
                   std::size_t& index) {
    const std::string head = std::string(list) + "[";
    const auto found = from.is_object() ? from.find(list) : from.end();
    if (!from.is_object() || path.compare(at, head.size(), head) != 0 || found == from.end() ||
        !found->is_array()) {
        return nullptr;
    }
    const char* end = path.data() + path.size();
    const auto [rest, error] = std::from_chars(path.data() + at + head.size(), end, index);
    if (error != std::errc() || rest == end || *rest != ']' || index >= found->size()) {
        return nullptr;
    }
    at = static_cast<std::size_t>(rest - path.data()) + 1;
    return &(*found)[index];
}

/// The link, and its hole, that a path leads to, as a person calls them; empty where it leads to neither.
std::string partWords(const Json& source, const std::string& path) {
    std::size_t at = 0;
    std::size_t index = 0;
    const Json* link = itemAt(source, "links", path, at, index);
    if (link == nullptr) {
        return {};
    }
    std::string words = say("link %1", nameIn(*link, index));
    for (const std::string_view end : {endWords(End::chassis), endWords(End::axle)}) {
        const std::string step = "." + std::string(end);
        if (path.compare(at, step.size(), step) != 0 || !link->is_object() || !link->contains(end)) {
            continue;
        }
        at += step.size();
        const std::string bracket = say("%1, %2", words, say(end));
        at += path.compare(at, 1, ".") == 0 ? 1U : 0U;
        const Json* hole = itemAt((*link)[std::string(end)], "holes", path, at, index);
        words = hole == nullptr ? bracket : say("%1 hole %2", bracket, nameIn(*hole, index));
        break;
    }
    return words;
}

ReadResult carFrom(Json&& source) {
    LoadedCar loaded;
    try {
        detail::Reader reader(source, "", FieldId{});
        detail::exchange(reader, loaded.car);
    } catch (const FileProblem& problem) {
        return {std::nullopt, {problem.path, problem.reason, partWords(source, problem.path)}};
    }
    const std::vector<Fault> faults = findFaults(loaded.car);
    if (!faults.empty()) {
        return {std::nullopt,
                {faults.front().path, faults.front().reason, partWords(source, faults.front().path)}};
    }
    for (std::size_t state = 0; state < loaded.car.kept.size(); ++state) {
        const std::vector<Fault> theirs = findFaults(*loaded.car.kept[state].car);
        if (!theirs.empty()) {
            return {std::nullopt,
                    {pathOf("kept", state) + ".car." + theirs.front().path, theirs.front().reason}};
        }
    }
    loaded.source = std::move(source);
    return {std::move(loaded), {}};
}

}  // namespace

ReadResult readCar(std::string_view bytes) {
    if (bytes.size() > kMaxFileBytes) {
        return refused(tooLarge());
    }
    JsonResult json = parseJson(bytes);
    if (!json.value) {
        return {std::nullopt, json.problem};
    }
    return carFrom(std::move(*json.value));
}

FileBytes readCarBytes(const std::string& fileName) {
    const auto close = [](std::FILE* file) { std::fclose(file); };
    const std::unique_ptr<std::FILE, decltype(close)> file(std::fopen(fileName.c_str(), "rb"), close);
    if (!file) {
        return {{}, say("cannot be opened: %1", std::strerror(errno))};
    }
    // Reads one byte more than allowed at most: devices and pipes have no size to ask for.
    FileBytes read;
    std::array<char, 65536> block;
    std::size_t got = 0;
    while ((got = std::fread(block.data(), 1, block.size(), file.get())) > 0) {
        read.bytes.append(block.data(), got);
        if (read.bytes.size() > kMaxFileBytes) {
            return {{}, tooLarge()};
        }
    }
    if (std::ferror(file.get()) != 0) {
        return {{}, say("cannot be read: %1", std::strerror(errno))};
    }
    return read;
}

ReadResult readCarFile(const std::string& fileName) {
    FileBytes read = readCarBytes(fileName);
    return read.problem.empty() ? readCar(read.bytes) : refused(std::move(read.problem));
}

std::string writeCar(const Car& car, const Json& source) {
    Car copy = car;  // the description serves reading too and so takes parts it could change
    detail::Writer writer(source.empty() ? nullptr : &source);
    detail::exchange(writer, copy);
    return printJson(writer.finish());
}

}  // namespace bolthole

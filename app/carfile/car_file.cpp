#include "app/carfile/car_file.h"

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>

#include "app/carfile/car_file_shape.h"
#include "geometry/car/faults.h"

namespace bolthole {

namespace {

using Json = nlohmann::ordered_json;

std::string tooLarge() {
    return "larger than " + std::to_string(kMaxFileBytes) + " bytes";
}

ReadResult refused(std::string reason) {
    return {std::nullopt, {"", std::move(reason)}};
}

ReadResult carFrom(Json&& source) {
    LoadedCar loaded;
    try {
        detail::Reader reader(source, "", FieldId{});
        detail::exchange(reader, loaded.car);
    } catch (const FileProblem& problem) {
        return {std::nullopt, problem};
    }
    const std::vector<Fault> faults = findFaults(loaded.car);
    if (!faults.empty()) {
        return {std::nullopt, {faults.front().path, faults.front().reason}};
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
        return {{}, std::string("cannot be opened: ") + std::strerror(errno)};
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
        return {{}, std::string("cannot be read: ") + std::strerror(errno)};
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

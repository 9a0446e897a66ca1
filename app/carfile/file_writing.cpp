#include "app/carfile/file_writing.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <system_error>

#include "app/carfile/descriptor.h"
#include "geometry/units/say.h"

namespace bolthole {

namespace {

std::string reasonOf(int error) {
    return say("cannot be written: %1", std::strerror(error));
}

// Makes a new file beside `target` and sets `name`. Its own short name fits where the target's does.
Descriptor makeBeside(const std::filesystem::path& target, std::string& name) {
    constexpr int kAttempts = 100;
    int number = -1;
    for (int i = 0; i < kAttempts && number < 0; ++i) {
        const std::string leaf = ".bolthole-" + std::to_string(::getpid()) + "-" + std::to_string(i);
        name = (target.parent_path() / leaf).string();
        number = ::open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
        if (number < 0 && errno != EEXIST) {
            break;
        }
    }
    return Descriptor(number);
}

// Gives a new file the permissions of the one it replaces, if there is one.
bool keepPermissions(const Descriptor& file, const std::filesystem::path& replaced) {
    struct stat status {};
    return ::stat(replaced.c_str(), &status) != 0 || ::fchmod(file.number(), status.st_mode & 07777U) == 0;
}

// Everything `produce` hands over; where it can't be written, errno says why.
bool writeProduced(const Descriptor& file, const Producer& produce) {
    int error = 0;
    const bool written = produce([&](std::string_view bytes) {
        const bool taken = writeAll(file, bytes);
        error = taken ? error : errno;
        return taken;
    });
    errno = written ? errno : error;
    return written;
}

std::string writeDirectly(const std::string& fileName, const Producer& produce) {
    Descriptor file(::open(fileName.c_str(), O_WRONLY | O_CLOEXEC));
    if (!file.isOpen() || !writeProduced(file, produce) || !file.close()) {
        return reasonOf(errno);
    }
    return {};
}

std::string replaceFile(const std::filesystem::path& target, const Producer& produce) {
    std::string temporary;
    Descriptor file = makeBeside(target, temporary);
    if (!file.isOpen()) {
        return reasonOf(errno);
    }
    const bool replaced = writeProduced(file, produce) && keepPermissions(file, target) &&
                          ::fsync(file.number()) == 0 && file.close() &&
                          ::rename(temporary.c_str(), target.c_str()) == 0;
    if (!replaced) {
        const int error = errno;
        ::unlink(temporary.c_str());
        return reasonOf(error);
    }
    flushDirectoryOf(target);
    return {};
}

}  // namespace

std::string writeWholeFile(const std::string& fileName, std::string_view bytes) {
    return writeWholeFile(fileName, [bytes](const WriteBytes& write) { return write(bytes); });
}

std::string writeWholeFile(const std::string& fileName, const Producer& produce) {
    struct stat status {};
    if (::stat(fileName.c_str(), &status) != 0) {
        return replaceFile(fileName, produce);
    }
    if (S_ISDIR(status.st_mode)) {
        return reasonOf(EISDIR);
    }
    if (!S_ISREG(status.st_mode)) {
        return writeDirectly(fileName, produce);
    }
    if (::access(fileName.c_str(), W_OK) != 0) {
        return reasonOf(errno);  // a rename would get around the file's write protection
    }
    std::error_code error;
    const std::filesystem::path target = std::filesystem::canonical(fileName, error);
    return error ? reasonOf(error.value()) : replaceFile(target, produce);
}

}  // namespace bolthole

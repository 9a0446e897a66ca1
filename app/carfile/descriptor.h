// Files as the system writes them: what whole files and the recovery log share. Knows no Qt.
#pragma once

#include <filesystem>
#include <string_view>

namespace bolthole {

/// An open file descriptor; closes itself. A negative number: not open.
class Descriptor {
  public:
    explicit Descriptor(int number = -1) : number_(number) {}
    Descriptor(Descriptor&& other) noexcept;
    Descriptor& operator=(Descriptor&& other) noexcept;
    ~Descriptor();

    [[nodiscard]] int number() const { return number_; }
    [[nodiscard]] bool isOpen() const { return number_ >= 0; }
    /// Closing can report an error that writing did not; then errno says which.
    [[nodiscard]] bool close();

  private:
    int number_;
};

/// Writes all of `bytes`; false: not all of it was taken, and errno says why.
[[nodiscard]] bool writeAll(const Descriptor& file, std::string_view bytes);

/// A new name or a rename is on the disk once its directory is. A file system that cannot do this is no
/// reason to complain.
void flushDirectoryOf(const std::filesystem::path& file);

}  // namespace bolthole

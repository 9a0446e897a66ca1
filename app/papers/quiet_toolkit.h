// A toolkit for commands that paint: without a display, and silent.
#pragma once

#include <QGuiApplication>
#include <array>
#include <memory>
#include <string>

namespace bolthole {

/// While it lives, fonts and painters work without a display and the toolkit's warnings stay off standard
/// error, where one line says what is wrong with the car. Makes a QGuiApplication of its own on the offscreen
/// platform where there is none; undone at the end.
class QuietToolkit {
  public:
    QuietToolkit();
    QuietToolkit(const QuietToolkit&) = delete;
    QuietToolkit& operator=(const QuietToolkit&) = delete;
    ~QuietToolkit();

  private:
    QtMessageHandler formerHandler_;
    std::string name_ = "bolthole";
    int count_ = 1;
    std::array<char*, 2> words_{name_.data(), nullptr};
    std::unique_ptr<QGuiApplication> application_;
};

}  // namespace bolthole

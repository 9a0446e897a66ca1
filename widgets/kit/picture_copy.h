// Pictures that can be taken along: copied with what they say, or saved as a file.
#pragma once

#include <QString>
#include <memory>

class QMimeData;
class QWidget;

namespace bolthole {

/// Pixels of a picture that is taken along for each one on the screen, so that it prints well.
inline constexpr int kTakenPixels = 2;

/// What Ctrl+C takes of a picture: the picture as it is seen, and as text its accessible name and
/// description.
[[nodiscard]] std::unique_ptr<QMimeData> copyOf(QWidget& picture);

/// Writes the picture, whole or not at all: as SVG where the name ends so, lines and words as such, else as
/// PNG. False: it could not be written.
[[nodiscard]] bool savePicture(QWidget& picture, const QString& fileName);

/// Gives a picture the key Ctrl+C, and, where the right button has no other use in it, a context menu to copy
/// or to save it.
void offerPicture(QWidget& picture, bool hasMenu = true);

}  // namespace bolthole

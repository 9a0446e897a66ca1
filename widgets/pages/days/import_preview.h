// What a table of passes would bring, shown before anything is taken in.
#pragma once

#include <QDialog>
#include <vector>

#include "geometry/car/pass.h"
#include "geometry/units/units.h"

namespace bolthole {

/// What was read of a table.
struct ImportSummary {
    QString source{};             ///< the file's name, or that it was pasted
    QStringList problems{};       ///< by row; not empty: nothing can be taken in
    QStringList unknown{};        ///< headers that mean nothing here and are passed over
    std::vector<Pass> added{};    ///< passes that come
    std::vector<Pass> changed{};  ///< passes there were that change
};

/// Shows the passes, or row by row what can't be read: then it can only be left. Accepted: they are to be
/// taken in, all of them.
class ImportPreview : public QDialog {
    Q_OBJECT
  public:
    ImportPreview(const ImportSummary& summary, Units units, QWidget* parent = nullptr);
};

}  // namespace bolthole

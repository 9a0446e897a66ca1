#include "app/papers/change_file.h"

#include <QFileInfo>

#include "app/papers/pdf_file.h"
#include "app/papers/quiet_toolkit.h"
#include "geometry/trials/launch_trials.h"
#include "geometry/units/parallel.h"
#include "widgets/papers/change_sheet.h"
#include "widgets/words/trial_words.h"

namespace bolthole {

namespace {

// "monday" of "cars/monday.bolt.json"
QString nameOfFile(const std::string& file) {
    QString name = QFileInfo(QString::fromStdString(file)).fileName();
    for (const QString& ending : {QStringLiteral(".json"), QStringLiteral(".bolt")}) {
        if (name.endsWith(ending) && name.size() > ending.size()) {
            name.chop(ending.size());
        }
    }
    return name;
}

}  // namespace

std::string makeChangeSheet(const Car& before, const Car& after, const std::string& beforeFile,
                            const std::string& afterFile) {
    const QuietToolkit toolkit;
    const bool hasTitles = before.title != after.title && !before.title.empty() && !after.title.empty();
    const QString from = hasTitles ? QString::fromStdString(before.title) : nameOfFile(beforeFile);
    const QString to = hasTitles ? QString::fromStdString(after.title) : nameOfFile(afterFile);
    const QPageLayout page = changePageOf(usualPaper(after.units));
    const QStringList next = nextToTry(tryChanges(after, {.threads = machineThreads()}), after, after.units);
    const ChangeSheet sheet({before, after, from, to, NumberStyle{after.units}, QDate::currentDate(), next},
                            page);
    return pdfOf(sheet, page, after.title).toStdString();
}

}  // namespace bolthole

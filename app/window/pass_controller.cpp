#include "app/window/pass_controller.h"

#include <QClipboard>
#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QGuiApplication>
#include <QSaveFile>
#include <algorithm>

#include "app/commands/log_table.h"
#include "widgets/pages/days/days_page.h"
#include "widgets/pages/days/import_preview.h"

namespace bolthole {

namespace {

constexpr qint64 kMostTableBytes = qint64{16} * 1024 * 1024;

QString tableFilter() {
    return PassController::tr("Tables (*.csv);;All files (*)");
}

// A spreadsheet puts tabs between cells on the clipboard. What has commas outside of quotes is CSV already.
QByteArray asCsv(const QString& text) {
    const QString headers = text.section(QLatin1Char('\n'), 0, 0);
    if (!headers.contains(QLatin1Char('\t'))) {
        return text.toUtf8();
    }
    QString table;
    for (const QString& line : text.split(QLatin1Char('\n'))) {
        QStringList cells = line.split(QLatin1Char('\t'));
        for (QString& cell : cells) {
            cell.remove(QLatin1Char('\r'));
            const bool isBare = !cell.contains(QLatin1Char(',')) && !cell.contains(QLatin1Char('"'));
            cell = isBare || (cell.startsWith(QLatin1Char('"')) && cell.endsWith(QLatin1Char('"')))
                       ? cell
                       : QLatin1Char('"') + cell.replace(QLatin1Char('"'), QStringLiteral("\"\"")) +
                             QLatin1Char('"');
        }
        table += cells.join(QLatin1Char(',')) + QLatin1Char('\n');
    }
    return table.toUtf8();
}

ImportSummary summarize(const Car& before, const ImportedLog& imported, const QString& source) {
    ImportSummary summary{source, {}, {}, {}, {}};
    for (const std::string& problem : imported.problems) {
        summary.problems << QString::fromStdString(problem);
    }
    for (const std::string& header : imported.unknown) {
        summary.unknown << QString::fromStdString(header);
    }
    std::vector<Pass> left = before.passes;
    for (const Pass& pass : imported.car.passes) {
        const auto same = std::ranges::find(left, pass);
        if (same != left.end()) {
            left.erase(same);
            continue;
        }
        const bool isChange = std::ranges::any_of(before.passes, [&pass](const Pass& other) {
            return other.date == pass.date && other.number == pass.number;
        });
        (isChange ? summary.changed : summary.added).push_back(pass);
    }
    return summary;
}

}  // namespace

PassController::PassController(BenchState& bench, TestDaysPage& page, QObject* parent)
    : QObject(parent), bench_(bench), page_(page) {
    connect(&page, &TestDaysPage::setupPointed, this, &PassController::point);
    connect(&page, &TestDaysPage::importRequested, this, &PassController::readFile);
    connect(&page, &TestDaysPage::pasteRequested, this, &PassController::readClipboard);
    connect(&page, &TestDaysPage::exportRequested, this, &PassController::writeFile);
}

void PassController::point(const std::optional<int>& state) {
    const bool exists = state && static_cast<std::size_t>(*state) < bench_.car.kept.size();
    const KeptSetup* kept = exists ? &bench_.car.kept[static_cast<std::size_t>(*state)] : nullptr;
    pointed_ = kept == nullptr ? nullptr : kept->car;
    ghost_.reset();
    bench_.pointed.reset();
    if (kept != nullptr) {
        Ghost ghost{*kept->car, {}, {}, QString::fromStdString(kept->name)};
        computeTrace(ghost.car, ghost.trace);
        if (ghost.trace.assembly.usable()) {
            ghost_ = std::move(ghost);
        }
    }
    keepGhost();
    emit pointedChanged();
}

void PassController::keepGhost() {
    const bool isKept = std::ranges::any_of(bench_.car.kept,
                                            [this](const KeptSetup& state) { return state.car == pointed_; });
    if (!isKept) {
        ghost_.reset();
        pointed_.reset();
    }
    if (ghost_ && !bench_.pointed) {
        bench_.pointed = ghost_;
        bench_.pointed->cursor = solveStation(bench_.pointed->car, bench_.cursorTravel);
    }
}

void PassController::readFile() {
    const QString name = QFileDialog::getOpenFileName(&page_, tr("Take passes in"), {}, tableFilter());
    if (name.isEmpty()) {
        return;
    }
    QFile file(name);
    if (!file.open(QIODevice::ReadOnly) || file.size() > kMostTableBytes) {
        emit said(tr("%1 was not read: %2")
                      .arg(QFileInfo(name).fileName(),
                           file.isOpen() ? tr("it is larger than 16 MB") : file.errorString()));
        return;
    }
    takeTable(file.readAll(), QFileInfo(name).fileName());
}

void PassController::readClipboard() {
    const QString text = QGuiApplication::clipboard()->text();
    if (text.trimmed().isEmpty()) {
        emit said(tr(
            "There is no table on the clipboard. Copy one with a row of headers: number and date at least."));
        return;
    }
    takeTable(asCsv(text), tr("the clipboard"));
}

void PassController::takeTable(const QByteArray& bytes, const QString& source) {
    const ImportedLog imported = importLog(bench_.car, bytes.toStdString());
    ImportPreview preview(summarize(bench_.car, imported, source), bench_.style.units, &page_);
    if (preview.exec() == QDialog::Accepted && imported.problems.empty()) {
        emit passesRead(imported.car.passes);
    }
}

void PassController::writeFile() {
    QString name =
        QFileDialog::getSaveFileName(&page_, tr("Write the log"), QStringLiteral("log.csv"), tableFilter());
    if (name.isEmpty()) {
        return;
    }
    QSaveFile file(name);
    const QByteArray table = QByteArray::fromStdString(logTable(bench_.car, bench_.style.units));
    if (!file.open(QIODevice::WriteOnly) || file.write(table) != table.size() || !file.commit()) {
        emit said(tr("%1 was not written: %2").arg(QFileInfo(name).fileName(), file.errorString()));
    }
}

}  // namespace bolthole

#include "app/document/document.h"

#include <QDir>
#include <QFileInfo>

#include "app/carfile/file_writing.h"
#include "app/document/sha256.h"
#include "geometry/combinations/combination_figures.h"
#include "geometry/passes/take_passes.h"

namespace bolthole {

/// One undo step: the car before and after, and what was selected.
class ChangeCar : public QUndoCommand {
  public:
    ChangeCar(Document& document, const QString& words, std::shared_ptr<const Car> after,
              const PointId& selected)
        : QUndoCommand(words),
          document_(document),
          before_(document.car_),
          after_(std::move(after)),
          selectedBefore_(document.selection_),
          selectedAfter_(selected) {}

    void undo() override {
        document_.lastStep_ = Document::tr("Undone: %1").arg(text());
        document_.become(before_, selectedBefore_);
    }
    void redo() override {
        document_.lastStep_ = text();
        document_.become(after_, selectedAfter_);
    }

    [[nodiscard]] const std::shared_ptr<const Car>& before() const { return before_; }
    [[nodiscard]] bool changesHoles() const {
        return before_->links.size() == after_->links.size() && holesInUse(*before_) != holesInUse(*after_);
    }

  private:
    Document& document_;
    std::shared_ptr<const Car> before_;
    std::shared_ptr<const Car> after_;
    PointId selectedBefore_;
    PointId selectedAfter_;
};

Document::Document(QObject* parent, int version)
    : QObject(parent),
      car_(std::make_shared<const Car>()),
      source_(std::make_shared<const nlohmann::ordered_json>()),
      version_(version) {
    undo_.setUndoLimit(kUndoSteps);
    connect(&undo_, &QUndoStack::cleanChanged, this, &Document::fileStateChanged);
    // After the stack has moved, so that what is told of the edited state holds.
    connect(&undo_, &QUndoStack::indexChanged, this, [this] {
        if (!lastStep_.isEmpty()) {
            emit stepDone(lastStep_);
        }
    });
}

Document::~Document() {
    undo_.disconnect(this);  // it tells its listeners while it is taken down
}

std::shared_ptr<const Car> Document::carBeforeBolting() const {
    for (int step = undo_.index() - 1; step >= 0; --step) {
        const auto* change = dynamic_cast<const ChangeCar*>(undo_.command(step));
        if (change != nullptr && change->changesHoles()) {
            return change->before();
        }
    }
    return nullptr;
}

void Document::become(std::shared_ptr<const Car> car, const PointId& selection) {
    if (car->units != units_) {
        auto shown = std::make_shared<Car>(*car);
        shown->units = units_;
        car = std::move(shown);
    }
    car_ = std::move(car);
    preview_.reset();
    selection_ = selection;
    emit carChanged();
}

void Document::showIn(Units units) {
    units_ = units;
    if (car_->units != units) {
        become(car_, selection_);
    }
}

void Document::reset(LoadedCar loaded, const QString& fileName, const QByteArray& hash) {
    lastStep_.clear();
    undo_.clear();
    fileVersion_ = loaded.source.value("version", version_);
    source_ = std::make_shared<const nlohmann::ordered_json>(std::move(loaded.source));
    fileName_ = fileName;
    noteFile(hash);
    units_ = loaded.car.units;
    become(std::make_shared<const Car>(std::move(loaded.car)), {});
    emit fileChanged();
    emit fileStateChanged();
}

void Document::noteFile(const QByteArray& hash) {
    const QFileInfo info(fileName_);
    fileHash_ = hash;
    fileTime_ = info.lastModified();
    fileSize_ = fileName_.isEmpty() ? -1 : info.size();
}

QString Document::open(const QString& fileName) {
    FileBytes file = readCarBytes(QDir::toNativeSeparators(fileName).toStdString());
    ReadResult result = file.problem.empty() ? readCar(file.bytes) : ReadResult{{}, {"", file.problem}};
    if (!result.loaded) {
        return QString::fromStdString(result.problem.line());
    }
    reset(std::move(*result.loaded), QFileInfo(fileName).absoluteFilePath(), sha256Of(file.bytes));
    return {};
}

void Document::adopt(LoadedCar loaded) {
    reset(std::move(loaded), {}, {});
}

QString Document::recover(const RecoveryRecord& record) {
    ReadResult result = readCar(record.carBytes);
    if (!result.loaded) {
        return QString::fromStdString(result.problem.line());
    }
    reset(std::move(*result.loaded), record.file, record.fileHash);
    fileTime_ = {};  // whether the file is as it was then is for its hash to say
    undo_.resetClean();
    emit stepDone(record.what);
    return {};
}

bool Document::isChangedElsewhere() const {
    const QFileInfo info(fileName_);
    if (fileName_.isEmpty() || !info.exists() ||
        (info.lastModified() == fileTime_ && info.size() == fileSize_)) {
        return false;
    }
    return isTheirs(readCarBytes(QDir::toNativeSeparators(fileName_).toStdString()));
}

bool Document::isTheirs(const FileBytes& file) const {
    return !file.problem.empty() || sha256Of(file.bytes) != fileHash_;
}

// Keeps a file that is about to be replaced, under a name that says what it is. Saved: under which; failed:
// then it must not be replaced.
SaveResult Document::keepBeside(const QString& fileName, const FileBytes& file, const QString& label) {
    const QFileInfo info(fileName);
    const QString stem = info.fileName().section(QLatin1Char('.'), 0, 0);
    const QString ending = info.fileName().mid(stem.size());
    QString copy;
    int count = 0;
    do {
        const QString number = ++count == 1 ? QString() : QStringLiteral(" %1").arg(count);
        copy = info.dir().filePath(stem + QStringLiteral(" (%1%2)").arg(label, number) + ending);
    } while (QFileInfo::exists(copy));
    const std::string problem = file.problem.empty()
                                    ? writeWholeFile(QDir::toNativeSeparators(copy).toStdString(), file.bytes)
                                    : file.problem;
    if (!problem.empty()) {
        return {SaveResult::Outcome::failed,
                tr("can't be kept before it is replaced: %1").arg(QString::fromStdString(problem))};
    }
    return {SaveResult::Outcome::saved, copy};
}

// Looks at what is there before it is replaced, and keeps it where it is worth that. Saved: the way is clear.
SaveResult Document::clearTheWay(const QString& target, bool replaceTheirs) const {
    if (target != fileName_ || !QFileInfo::exists(target)) {
        return {SaveResult::Outcome::saved, {}};
    }
    const FileBytes there = readCarBytes(QDir::toNativeSeparators(target).toStdString());
    const bool changed = isTheirs(there);
    if (changed && !replaceTheirs) {
        return {SaveResult::Outcome::changedElsewhere, {}};
    }
    if (changed || fileVersion_ < version_) {
        return keepBeside(target, there,
                          changed ? tr("as changed elsewhere") : tr("version %1").arg(fileVersion_));
    }
    return {SaveResult::Outcome::saved, {}};
}

SaveResult Document::save(const QString& fileName, bool replaceTheirs) {
    const QString target = QFileInfo(fileName).absoluteFilePath();
    SaveResult result = clearTheWay(target, replaceTheirs);
    if (!result.saved()) {
        return result;
    }
    const std::string bytes = writeCar(*car_, *source_);
    const std::string problem = writeWholeFile(QDir::toNativeSeparators(target).toStdString(), bytes);
    if (!problem.empty()) {
        return {SaveResult::Outcome::failed, QString::fromStdString(problem)};
    }
    const bool moved = target != fileName_;
    fileName_ = target;
    fileVersion_ = version_;
    noteFile(sha256Of(bytes));
    undo_.setClean();
    if (moved) {
        emit fileChanged();
    }
    emit stepDone(tr("Save"));
    emit fileStateChanged();
    return result;
}

RecoveryPoint Document::recoveryPoint(const QString& what) const {
    return {what, !isEdited(), fileHash_, car_, source_};
}

QString Document::apply(const Edit& edit, EditPhase phase, const PointId& selected) {
    if (phase == EditPhase::abandoned) {
        abandonDrag();
        return {};
    }
    if (const auto* shown = edit.as<SetUnits>()) {
        showIn(shown->units);
        return {};
    }
    EditResult result = bolthole::apply(*car_, edit);
    if (!result.refusal.empty()) {
        if (phase == EditPhase::dragged) {
            abandonDrag();
        }
        return QString::fromStdString(result.refusal);
    }
    auto after = std::make_shared<const Car>(std::move(result.car));
    if (phase == EditPhase::dragging) {
        preview_ = std::move(after);
        emit carChanged();
        return {};
    }
    if (*after == *car_) {  // no step for no change
        abandonDrag();
        return {};
    }
    const QString words = QString::fromStdString(describe(edit, *car_));
    undo_.push(new ChangeCar(*this, words, std::move(after), selected));
    return {};
}

QString Document::takePasses(const std::vector<Pass>& passes, const PointId& selected) {
    abandonDrag();
    Car after = *car_;
    const std::string refusal = bolthole::takePasses(after, passes);
    if (refusal.empty() && !(after == *car_)) {
        const QString words = QString::fromStdString(describeTaken(*car_, passes));
        undo_.push(new ChangeCar(*this, words, std::make_shared<const Car>(std::move(after)), selected));
    }
    return QString::fromStdString(refusal);
}

void Document::abandonDrag() {
    if (preview_) {
        preview_.reset();
        emit carChanged();
    }
}

}  // namespace bolthole

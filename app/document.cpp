#include "app/document.h"

#include <QDir>
#include <QFileInfo>

#include "app/file_writing.h"

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

    void undo() override { document_.become(before_, selectedBefore_); }
    void redo() override { document_.become(after_, selectedAfter_); }

  private:
    Document& document_;
    std::shared_ptr<const Car> before_;
    std::shared_ptr<const Car> after_;
    PointId selectedBefore_;
    PointId selectedAfter_;
};

Document::Document(QObject* parent) : QObject(parent), car_(std::make_shared<const Car>()) {
    connect(&undo_, &QUndoStack::cleanChanged, this, &Document::fileStateChanged);
}

void Document::become(std::shared_ptr<const Car> car, const PointId& selection) {
    car_ = std::move(car);
    preview_.reset();
    selection_ = selection;
    emit carChanged();
}

void Document::reset(LoadedCar loaded, const QString& fileName) {
    undo_.clear();
    source_ = std::move(loaded.source);
    fileName_ = fileName;
    become(std::make_shared<const Car>(std::move(loaded.car)), {});
    emit fileStateChanged();
}

QString Document::open(const QString& fileName) {
    ReadResult result = readCarFile(QDir::toNativeSeparators(fileName).toStdString());
    if (!result.loaded) {
        return QString::fromStdString(result.problem.line());
    }
    reset(std::move(*result.loaded), QFileInfo(fileName).absoluteFilePath());
    return {};
}

void Document::adopt(LoadedCar loaded) {
    reset(std::move(loaded), {});
}

QString Document::save(const QString& fileName) {
    const std::string bytes = writeCar(*car_, source_);
    const std::string problem = writeWholeFile(QDir::toNativeSeparators(fileName).toStdString(), bytes);
    if (!problem.empty()) {
        return QString::fromStdString(problem);
    }
    fileName_ = QFileInfo(fileName).absoluteFilePath();
    undo_.setClean();
    emit fileStateChanged();
    return {};
}

QString Document::apply(const Edit& edit, EditPhase phase, const PointId& selected) {
    if (phase == EditPhase::abandoned) {
        abandonDrag();
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

void Document::abandonDrag() {
    if (preview_) {
        preview_.reset();
        emit carChanged();
    }
}

}  // namespace bolthole

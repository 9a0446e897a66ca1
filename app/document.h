// The document: one car, its file, and the single door through which it changes.
#pragma once

#include <QObject>
#include <QString>
#include <QUndoStack>
#include <memory>
#include <nlohmann/json.hpp>

#include "app/car_file.h"
#include "widgets/bench_state.h"

namespace bolthole {

/// A car being edited. Every change is an Edit that comes through apply() and becomes one undoable step; a
/// drag previews without touching the undo stack until it ends. Whole cars are kept immutable and shared by
/// the undo steps.
class Document : public QObject {
    Q_OBJECT
  public:
    explicit Document(QObject* parent = nullptr);

    /// The car as it stands, the drag under way included.
    [[nodiscard]] const Car& car() const { return preview_ ? *preview_ : *car_; }
    [[nodiscard]] QUndoStack& undoStack() { return undo_; }
    /// Absolute path, empty for a car that was never saved.
    [[nodiscard]] const QString& fileName() const { return fileName_; }
    [[nodiscard]] bool isEdited() const { return !undo_.isClean(); }
    [[nodiscard]] bool isDragging() const { return preview_ != nullptr; }
    /// What was selected when the car came to be as it is, for undo and redo.
    [[nodiscard]] const PointId& selection() const { return selection_; }

    /// Reads a file and makes it the document. On failure gives the reason, one line; the document stays.
    [[nodiscard]] QString open(const QString& fileName);
    /// Makes a car that was read elsewhere the document, as never saved.
    void adopt(LoadedCar loaded);
    /// Writes the car, whole or not at all. On failure gives the reason; the old file and the edited state
    /// stay.
    [[nodiscard]] QString save(const QString& fileName);

    /// The one door. `selected`: what the person has selected with it. Gives why the edit was refused, or
    /// nothing.
    QString apply(const Edit& edit, EditPhase phase, const PointId& selected);
    /// Forgets a drag under way; the car is as before it.
    void abandonDrag();

  signals:
    /// The car changed: by an edit, undo, redo, or another file.
    void carChanged();
    /// File name or edited state changed.
    void fileStateChanged();

  private:
    friend class ChangeCar;
    void become(std::shared_ptr<const Car> car, const PointId& selection);
    void reset(LoadedCar loaded, const QString& fileName);

    std::shared_ptr<const Car> car_;
    std::shared_ptr<const Car> preview_;  // the drag under way, or null
    PointId selection_;
    nlohmann::ordered_json source_;  // as read: unknown keys live there
    QString fileName_;
    QUndoStack undo_;
};

}  // namespace bolthole

// The document: one car, its file, and the single door through which it changes.
#pragma once

#include <QDateTime>
#include <QObject>
#include <QString>
#include <QUndoStack>
#include <memory>
#include <nlohmann/json.hpp>

#include "app/carfile/car_file.h"
#include "app/document/recovery_log.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

/// How saving ended.
struct SaveResult {
    enum class Outcome {
        saved,
        changedElsewhere,  ///< nothing was written: the file is not as it was last read or written here
        failed             ///< nothing was written: the old file, if any, is as it was
    };
    Outcome outcome = Outcome::failed;
    QString reason;  ///< failed: why, one line. Saved: where a file that was replaced is kept, or empty

    [[nodiscard]] bool saved() const { return outcome == Outcome::saved; }
};

/// Steps that can be undone; older ones are forgotten, so that a long evening holds no more memory than an
/// hour.
inline constexpr int kUndoSteps = 500;

/// A car being edited. Every change is an Edit that comes through apply() and becomes one undoable step; a
/// drag previews without touching the undo stack until it ends. Whole cars are kept immutable and shared by
/// the undo steps.
class Document : public QObject {
    Q_OBJECT
  public:
    /// `version`: the car file's version that save() takes itself to write; tests try a newer one.
    explicit Document(QObject* parent = nullptr, int version = kCarFileVersion);
    /// Emits nothing.
    ~Document() override;

    /// The car as it stands, the drag under way included.
    [[nodiscard]] const Car& car() const { return preview_ ? *preview_ : *car_; }
    [[nodiscard]] QUndoStack& undoStack() { return undo_; }
    /// Absolute path, empty for a car that was never saved.
    [[nodiscard]] const QString& fileName() const { return fileName_; }
    [[nodiscard]] bool isEdited() const { return !undo_.isClean(); }
    [[nodiscard]] bool isDragging() const { return preview_ != nullptr; }
    /// The car as it was before the holes in use were last changed, as far as undo remembers: null where none
    /// of the steps done did. A drag under way has no say.
    [[nodiscard]] std::shared_ptr<const Car> carBeforeBolting() const;
    /// What was selected when the car came to be as it is, for undo and redo.
    [[nodiscard]] const PointId& selection() const { return selection_; }

    /// Reads a file and makes it the document. On failure gives the reason, one line; the document stays.
    [[nodiscard]] QString open(const QString& fileName);
    /// Makes a car that was read elsewhere the document, as never saved.
    void adopt(LoadedCar loaded);
    /// Makes what a recovery log held the document: edited, with the file it came from.
    [[nodiscard]] QString recover(const RecoveryRecord& record);
    /// Writes the car, whole or not at all. `replaceTheirs`: also where another program changed the file;
    /// what it wrote is then kept beside it, as is a file of an older version that is written anew for the
    /// first time.
    [[nodiscard]] SaveResult save(const QString& fileName, bool replaceTheirs = false);
    /// Whether the file is there and not as it was last read or written here, as far as its time and size
    /// tell; save() reads all of it.
    [[nodiscard]] bool isChangedElsewhere() const;
    /// What the recovery log is to keep: the car without a drag under way.
    [[nodiscard]] RecoveryPoint recoveryPoint(const QString& what) const;

    /// The one door. Units are what the car is shown in and no change of it: SetUnits is no step of undo, and
    /// a file is not edited by it; the next save writes them. `selected`: what the person has selected with
    /// it. Gives why the edit was refused, or nothing.
    QString apply(const Edit& edit, EditPhase phase, const PointId& selected);
    /// The same for passes that come all at once, in the place of all there are: one undoable step, or why
    /// not.
    QString takePasses(const std::vector<Pass>& passes, const PointId& selected);
    /// Forgets a drag under way; the car is as before it.
    void abandonDrag();

  signals:
    /// The car changed: by an edit, undo, redo, or another file.
    void carChanged();
    /// File name or edited state changed.
    void fileStateChanged();
    /// A step was done, undone or redone, or the car saved: `what` in words.
    void stepDone(const QString& what);
    /// Another car, or another file for the same one.
    void fileChanged();

  private:
    friend class ChangeCar;
    void become(std::shared_ptr<const Car> car, const PointId& selection);
    void showIn(Units units);
    void reset(LoadedCar loaded, const QString& fileName, const QByteArray& hash);
    void noteFile(const QByteArray& hash);
    [[nodiscard]] bool isTheirs(const FileBytes& file) const;
    [[nodiscard]] static SaveResult keepBeside(const QString& fileName, const FileBytes& file,
                                               const QString& label);
    [[nodiscard]] SaveResult clearTheWay(const QString& target, bool replaceTheirs) const;

    std::shared_ptr<const Car> car_;
    std::shared_ptr<const Car> preview_;  // the drag under way, or null
    Units units_ = Units::inch;           // what every car of the history is shown in
    PointId selection_;
    QString lastStep_;                                      // in words; empty: none since the car was opened
    std::shared_ptr<const nlohmann::ordered_json> source_;  // as read: unknown keys live there
    QString fileName_;
    QByteArray fileHash_;  // of the file as last read or written here, SHA-256 in hexadecimal
    QDateTime fileTime_;   // and its time and size then
    qint64 fileSize_ = -1;
    int version_;          // of the car file that is written
    int fileVersion_ = 0;  // of the file that was read; 0: none
    QUndoStack undo_;
};

}  // namespace bolthole

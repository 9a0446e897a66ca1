// The kept setups of a car as a list, the one that is the baseline marked.
#pragma once

#include <QListWidget>
#include <optional>
#include <vector>

#include "geometry/car/car.h"

namespace bolthole {

/// Two lines a state: name and date; the mark of the baseline, and the note cut to fit. Enter and
/// double-click ask to compare with it, F2 to rename, Delete to delete.
class KeptList : public QListWidget {
    Q_OBJECT
  public:
    explicit KeptList(QWidget* parent = nullptr);

    /// Shows the states of `car`. The same states again cost next to nothing and leave selection and scroll
    /// as they are; a new one is selected.
    void showStates(const Car& car);

    /// The state selected; nothing where none is kept.
    [[nodiscard]] std::optional<int> selected() const;

    [[nodiscard]] QSize sizeHint() const override { return {250, 180}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {120, 40}; }

  signals:
    void compareRequested(int state);
    void renameRequested(int state);
    void deleteRequested(int state);

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    struct Shown {
        QString name;
        QString date;
        QString note;
        bool isBefore = false;

        bool operator==(const Shown&) const = default;
    };
    void fill(const std::vector<Shown>& states);
    void dress();

    std::vector<Shown> shown_;
};

}  // namespace bolthole

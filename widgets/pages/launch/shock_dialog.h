// Takes the forces of a shock: from a shock dyno's sheet, from a hung weight and a stopwatch, or an estimate.
#pragma once

#include <QDialog>
#include <optional>

#include "geometry/dynamics/shock_sheet.h"

class QLabel;
class QPlainTextEdit;
class QPushButton;

namespace bolthole {

class CalmCombo;
class ToneLabel;

/// Bump and rebound each have their text. What is made of them is said while they are changed, each refused
/// row by its line; taken is a whole table or none.
class ShockDialog : public QDialog {
    Q_OBJECT
  public:
    /// Where the forces come from, in the order of the list.
    enum class Source { sheet, readings, estimate };

    /// `whose`: "the front shocks"; `now`: what is entered, shown to be edited; `estimate`: nothing where the
    /// car lacks a number for one.
    ShockDialog(const QString& whose, const std::optional<Damping>& now,
                const std::optional<Damping>& estimate, Units units, QWidget* parent = nullptr);

    /// What is to be entered; nothing: the forces are to be taken away.
    [[nodiscard]] const std::optional<Damping>& damping() const { return damping_; }
    void choose(Source source);

  private:
    QPlainTextEdit* addText(const QString& name);
    void showSource();
    void refresh();
    [[nodiscard]] QStringList refusedLines(const ShockWay& way, const QString& name) const;
    [[nodiscard]] QString verdict() const;

    Units units_;
    std::optional<Damping> now_;
    std::optional<Damping> estimate_;
    std::optional<Damping> damping_;
    CalmCombo* source_;
    ToneLabel* words_;
    QWidget* texts_;
    QPlainTextEdit* bump_;
    QPlainTextEdit* rebound_;
    ToneLabel* good_;
    ToneLabel* bad_;
    QPushButton* take_ = nullptr;
};

}  // namespace bolthole

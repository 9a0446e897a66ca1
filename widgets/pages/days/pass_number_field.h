// A field for one number of a pass: typed in the units shown, kept in the file's.
#pragma once

#include <QLineEdit>
#include <optional>

#include "geometry/car/pass_fields.h"

namespace bolthole {

/// What a PassNumberField holds as it stands typed.
struct TypedPassNumber {
    OptionalNumber value = std::nullopt;  ///< in the file's unit; nothing for an empty field
    QString problem{};                    ///< why it was refused; empty: it was not
};

/// May always be left empty. What can't be read or is not allowed is marked, with its reason in the tool tip
/// and in problemChanged(), and kept as typed. Takes nothing by itself: whoever has the field reads it.
class PassNumberField : public QLineEdit {
    Q_OBJECT
  public:
    explicit PassNumberField(PassField field, QWidget* parent = nullptr);

    [[nodiscard]] PassField field() const { return field_; }
    /// Shows a number of the file; one that is not touched is given back to the last digit.
    void showNumber(const OptionalNumber& inFile, Units units);
    /// Whether something was typed since.
    [[nodiscard]] bool isTyped() const;
    /// Reads what stands in it: decimals and fractions, with the unit's mark or without.
    [[nodiscard]] TypedPassNumber typed() const;
    /// Marks what is wrong with it, or that nothing is; gives typed().
    TypedPassNumber check();

  signals:
    void problemChanged(const QString& problem);
    void howToRequested(bolthole::PassField field);  ///< F1: how it is measured

  protected:
    /// Undo and redo are the window's where nothing is typed.
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    void renewTip();

    PassField field_;
    Units units_ = Units::inch;
    OptionalNumber shown_ = std::nullopt;
    QString shownText_;
    QString problem_;
};

/// What a number of a pass has to be: "a pressure from 0 to 145 psi".
[[nodiscard]] QString limitsOf(PassField field, Units units);

}  // namespace bolthole

// A line edit for one measured number: typed in fractions or decimals, refused in place, never guessed.
#pragma once

#include <QLineEdit>
#include <functional>
#include <optional>
#include <span>
#include <string>

#include "geometry/car/uncertainties.h"
#include "geometry/units/text.h"

namespace bolthole {

/// Shows one number and takes a new one. Enter, Tab and leaving the field commit, Enter and Tab go on to the
/// next; Esc restores. A click into it selects the number, as Tab does; leaving it leaves nothing selected.
/// Text that cannot be read, or that the check refuses, stays with its reason until it is mended or restored.
/// The mouse wheel passes through. Up and Down step by the style's fraction, with Shift by the coarse step.
/// Values are SI; the quantity decides units. While it is not entered it shows what a tape
/// shows, "≈ 21 11/32"; entered, the number itself.
class NumberField : public QLineEdit {
    Q_OBJECT
  public:
    /// Why a value (SI) that could be read is not allowed; empty: allowed.
    using Check = std::function<std::string(double)>;

    explicit NumberField(Quantity quantity, QWidget* parent = nullptr);

    void setCheck(Check check) { check_ = std::move(check); }
    /// Whether emptying the field is a way to remove the number.
    void setMayBeEmpty(bool may) { mayBeEmpty_ = may; }
    /// The field is never narrower than its number, nor than this text.
    void setLeastText(const QString& text) { leastText_ = text; }
    [[nodiscard]] QSize minimumSizeHint() const override;
    /// Where steps begin while there is no number, SI; nothing: there are none until one is typed.
    void setStepStart(std::optional<double> start) { stepStart_ = start; }
    /// How the number is measured: tool tip, and accessible description while nothing is wrong.
    void setHowTo(const QString& words);
    /// The uncertainty of the number, asked for whenever the tool tip is shown: "± 0.05 in (tape)". With it
    /// the field's menu and Alt+U ask for more: uncertaintyRequested(). Without it the number is not a
    /// measured one.
    using UncertaintyWords = std::function<QString()>;
    void setUncertaintyWords(UncertaintyWords words) { uncertaintyWords_ = std::move(words); }

    /// Who shows how the number is measured when F1 or the field's menu asks for it; else its words stand
    /// beside the field.
    void setHowToCall(std::function<void()> call) { howToCall_ = std::move(call); }

    /// Where the number comes from: what nobody measured, a starting number or one worked out, has a ground
    /// and a row of dots of its own until it is typed.
    void setOrigin(Origin origin);
    [[nodiscard]] Origin origin() const { return origin_; }
    /// Whether committed() came of a step, not of typing.
    [[nodiscard]] bool isStepping() const { return stepping_; }

    /// Shows a number (nothing: an absent one). Does next to nothing when neither changed. Text being typed
    /// stays, and is still read in the units it was begun in.
    void showNumber(std::optional<double> value, NumberStyle style);
    /// What is wrong with the number the car holds; empty: nothing.
    void setFault(const QString& reason);
    /// What looks doubtful about it; empty: nothing. Said where nothing worse is, and no problem.
    void setWarning(const QString& reason);

    /// The number last shown, SI.
    [[nodiscard]] std::optional<double> number() const { return value_; }
    /// The number as it now stands typed, SI; nothing where it cannot be read or is not allowed.
    [[nodiscard]] std::optional<double> typedNumber() const;
    /// Why the text as it now stands can't be taken; empty: it can.
    [[nodiscard]] QString refusalNow() const;
    /// What to say under the field: why the text was refused, that the text is still read in the units it was
    /// begun in, the fault, or the warning. Empty: nothing.
    [[nodiscard]] QString note() const;
    /// Whether the note is a complaint.
    [[nodiscard]] bool hasProblem() const { return !problem_.isEmpty() || !fault_.isEmpty(); }
    /// Whether the text was typed and not yet taken.
    [[nodiscard]] bool isEdited() const { return edited_; }
    /// Mark of the unit the text stands in.
    [[nodiscard]] QString unitText() const;

    /// Takes what was typed: emits committed() or cleared(), or marks the problem. True: nothing is left
    /// pending.
    bool commit();
    /// Drops what was typed and shows the number again.
    void restore();
    /// Enters the next number field of the same list or part; stays where this is the last.
    void goOn() { enterNextNumber(this); }
    /// The same from another widget.
    static void enterNextNumber(QWidget* from);

  signals:
    void committed(double value);  ///< a new number was typed or stepped to, SI
    void cleared();                ///< the field was emptied and may be empty
    void confirmed();              ///< Enter was pressed and nothing is pending
    void noteChanged();            ///< note() or unitText() may have changed
    void entered();                ///< the field gained the keyboard focus
    void uncertaintyRequested();   ///< the person asks for the uncertainty of the number

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void changeEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    [[nodiscard]] TypedNumber read() const;
    void renewToolTip();
    void sayHowTo();
    void take(double value);
    void step(bool up, bool coarse);
    void render();
    void setProblem(const QString& problem);
    void selectWhereEntered();
    void refreshNote();

    Quantity quantity_;
    Check check_;
    bool mayBeEmpty_ = false;
    std::optional<double> stepStart_ = 0;
    QString leastText_;
    QString howTo_;
    UncertaintyWords uncertaintyWords_;
    std::function<void()> howToCall_;
    std::optional<double> value_;
    NumberStyle style_;
    Units textUnits_ = Units::inch;  // units the text was begun in
    bool rendered_ = false;
    bool edited_ = false;
    Origin origin_ = Origin::measured;
    bool stepping_ = false;
    bool clickedInto_ = false;  // the press that entered the field is not let go yet
    QString problem_;           // why the typed text was refused
    QString fault_;             // what is wrong with the number shown
    QString warning_;           // what looks doubtful about it
};

/// Which of the fields holds no number that may be taken, and why, in a sentence: "Wheelbase: expected a
/// length above 0". Empty: none.
[[nodiscard]] QString unreadField(std::span<NumberField* const> fields);

/// The step of the arrow keys, SI: a sixteenth, a thirty-second or 0.05 in after the style, 1 mm, 0.1 degree,
/// 1 lb or kg, 0.1 of a ratio, 1 of a count; coarse: 1 in, 10 mm, 1 degree, 10 lb or kg, 1, 10.
[[nodiscard]] double arrowStep(Quantity quantity, NumberStyle style, bool coarse);

/// The dots below a number that nobody measured, or a figure that rests on one: from `left` to `right`, px.
void drawStartingDots(QPainter& painter, double left, double right, double y);

/// Text as a tool tip that wraps instead of running across the screen.
[[nodiscard]] QString wrappedToolTip(const QString& words);

}  // namespace bolthole

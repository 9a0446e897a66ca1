// The small parts the car sheet is made of: toned labels, boxed rows, name fields, hole marks.
#pragma once

#include <QAbstractButton>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QRadioButton>
#include <QWidget>

#include "geometry/car/car.h"
#include "widgets/kit/number_field.h"

class QHBoxLayout;
class QScrollArea;

namespace bolthole {

/// A label in one of the sheet's tones; follows the theme.
class ToneLabel : public QLabel {
    Q_OBJECT
  public:
    enum class Tone { plain, muted, heading, problem };
    explicit ToneLabel(Tone tone, const QString& text = QString(), QWidget* parent = nullptr);

    /// Sets the text only where it differs.
    void showText(const QString& text);
    /// Another color; the font stays that of the first tone.
    void setTone(Tone tone);

  protected:
    void changeEvent(QEvent* event) override;

  private:
    void paintTone();
    Tone tone_;
};

/// What is wrong with one of the fields it watches, under them; hidden while all is well. Grows with its
/// text.
class NoteLabel : public ToneLabel {
    Q_OBJECT
  public:
    explicit NoteLabel(QWidget* parent = nullptr);

    /// Watches a field; `name` tells it from its neighbors and may be empty.
    void watch(NumberField* field, const QString& name = QString());

  private:
    void refresh();
    struct Watched {
        NumberField* field;
        QString name;
    };
    std::vector<Watched> watched_;
};

/// A rounded box: label at left, an editor at right, a quiet unit, room for a small action. Clicking anywhere
/// in it enters the editor.
class BoxRow : public QWidget {
    Q_OBJECT
  public:
    BoxRow(const QString& label, QWidget* editor, QWidget* parent = nullptr);

    /// A small widget right of the editor.
    void addTrailing(QWidget* widget);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  protected:
    QHBoxLayout* layout_;

  private:
    QWidget* editor_;
};

/// One number in a BoxRow with its unit, and its note below.
class NumberRow : public QWidget {
    Q_OBJECT
  public:
    NumberRow(const QString& label, NumberField* field, QWidget* parent = nullptr);

    void addTrailing(QWidget* widget) { box_->addTrailing(widget); }
    [[nodiscard]] NumberField* field() const { return field_; }

  private:
    NumberField* field_;
    BoxRow* box_;
    ToneLabel* unit_;
};

/// A line edit for a name or title: Enter and leaving take it, Esc restores. A blank one is refused by
/// restoring where `mayBeBlank` is off.
class NameField : public QLineEdit {
    Q_OBJECT
  public:
    explicit NameField(QWidget* parent = nullptr);

    void setMayBeBlank(bool may) { mayBeBlank_ = may; }
    /// Shows the name unless another is being typed.
    void showName(const std::string& name);
    /// Takes what was typed.
    void commit();
    void restore();

  signals:
    void renamed(const std::string& name);
    void entered();

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    std::string name_;
    bool mayBeBlank_ = false;
};

/// The mark of a hole: a ring; filled, with a dot, where the link is bolted. A radio button for keyboard and
/// screen reader; a click only asks, what is shown comes from the car.
class HoleMark : public QRadioButton {
    Q_OBJECT
  public:
    explicit HoleMark(QWidget* parent = nullptr);

    void showState(bool inUse, Role role);
    [[nodiscard]] QSize sizeHint() const override;

  protected:
    void nextCheckState() override {}
    bool hitButton(const QPoint& at) const override { return rect().contains(at); }
    void paintEvent(QPaintEvent* event) override;

  private:
    Role role_ = Role::lower;
};

/// A combo box the mouse wheel passes through, whose list is as wide as its longest line.
class CalmCombo : public QComboBox {
    Q_OBJECT
  public:
    using QComboBox::QComboBox;
    void showPopup() override;

  protected:
    void wheelEvent(QWheelEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
};

/// A button with a word or a sign, small and quiet.
[[nodiscard]] QAbstractButton* smallButton(const QString& text, const QString& accessibleName,
                                           const QString& toolTip, QWidget* parent);

/// Shows a part or leaves its place empty, so that what stands beside it stays where it is.
void keepPlace(QWidget* part, bool shown);

/// Takes out of `area` what it scrolls, to be replaced: from then on its parts emit nothing, and they go once
/// the signals that are on their way have returned. Nothing where it is empty.
void retireScrolled(QScrollArea& area);

/// The color of a role in the theme in force.
[[nodiscard]] QColor roleColor(Role role);

}  // namespace bolthole

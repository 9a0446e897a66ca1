// A group of the car sheet that can be folded away, leaving a summary.
#pragma once

#include <QAbstractButton>
#include <QWidget>

class QVBoxLayout;

namespace bolthole {

/// The heading of a section. Checked: unfolded. Space, Enter or a click toggles; Left folds, Right unfolds.
class SectionHeader : public QAbstractButton {
    Q_OBJECT
  public:
    explicit SectionHeader(QWidget* parent = nullptr);

    /// Title, and what is shown under it while folded.
    void showTexts(const QString& title, const QString& summary);
    /// Marks the heading with a triangle; `why` is told to a screen reader and by the tool tip. Empty: no
    /// mark.
    void showWarning(const QString& why);
    [[nodiscard]] const QString& warning() const { return warning_; }
    [[nodiscard]] QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void tellState();
    [[nodiscard]] bool showsSummary() const { return !isChecked() && !summary_.isEmpty(); }
    QString summary_;
    QString warning_;
    QString plainTip_;
};

/// A heading and a body in reading order.
class Section : public QWidget {
    Q_OBJECT
  public:
    explicit Section(const QString& title, QWidget* parent = nullptr);

    [[nodiscard]] SectionHeader* header() const { return header_; }
    [[nodiscard]] QVBoxLayout* body() const { return body_; }
    [[nodiscard]] bool isUnfolded() const { return header_->isChecked(); }
    void setUnfolded(bool unfolded) { header_->setChecked(unfolded); }

  private:
    SectionHeader* header_;
    QWidget* box_;
    QVBoxLayout* body_;
};

}  // namespace bolthole

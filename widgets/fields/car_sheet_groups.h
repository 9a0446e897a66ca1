// The groups of the car sheet that are not links: the car as a whole, driveline, travel, notes.
#pragma once

#include <QPlainTextEdit>

#include "geometry/edits/starting_car.h"
#include "widgets/fields/sheet_hub.h"
#include "widgets/kit/section.h"
#include "widgets/kit/sheet_parts.h"

namespace bolthole {

class WheelGrid;

/// Title, wheelbase, tires, track, corner weights, CG.
class CarSection : public Section {
    Q_OBJECT
  public:
    explicit CarSection(SheetHub& hub, QWidget* parent = nullptr);
    void refresh();

  private:
    SheetHub& hub_;
    NameField* title_;
    CalmCombo* body_;
    WheelGrid* weights_;
    double shownTotal_ = -1;
    double shownFront_ = -1;
    Units shownUnits_ = Units::inch;
};

/// Angles and joints of pinion and transmission output; or the button that adds them.
class DrivelineSection : public Section {
    Q_OBJECT
  public:
    explicit DrivelineSection(SheetHub& hub, QWidget* parent = nullptr);
    void refresh();

  private:
    void addJoints();
    void build();
    void offer();
    void showPinionNow();

    SheetHub& hub_;
    ToneLabel* pinionNow_ = nullptr;
    ToneLabel* jointsTitle_ = nullptr;
};

/// The swept travel.
class TravelSection : public Section {
    Q_OBJECT
  public:
    explicit TravelSection(SheetHub& hub, QWidget* parent = nullptr);
};

/// A plain text that is taken when the focus leaves it; Esc restores.
class NotesField : public QPlainTextEdit {
    Q_OBJECT
  public:
    explicit NotesField(QWidget* parent = nullptr);

    void showText(const std::string& text);
    void commit();
    void restore();

  signals:
    void rewritten(const std::string& text);

  protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

  private:
    std::string text_;
};

/// The car's notes.
class NotesSection : public Section {
    Q_OBJECT
  public:
    explicit NotesSection(SheetHub& hub, QWidget* parent = nullptr);
    void refresh();

  private:
    SheetHub& hub_;
    NotesField* notes_;
};

/// The choice what heights of axle holes are read from.
class DatumChoice : public QWidget {
    Q_OBJECT
  public:
    explicit DatumChoice(SheetHub& hub, QWidget* parent = nullptr);

  private:
    void showDatum();
    SheetHub& hub_;
    QAbstractButton* ground_;
    QAbstractButton* center_;
};

}  // namespace bolthole

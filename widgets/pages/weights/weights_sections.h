// The groups of fields of the weights page that are more than rows: a point, the loads.
#pragma once

#include <QWidget>
#include <vector>

#include "geometry/car/fields.h"
#include "widgets/fields/sheet_hub.h"
#include "widgets/kit/section.h"
#include "widgets/kit/sheet_parts.h"

class QVBoxLayout;

namespace bolthole {

/// Three coordinates under a title with their unit.
class PointRow : public QWidget {
    Q_OBJECT
  public:
    /// `id`: any coordinate of the point.
    PointRow(SheetHub& hub, const QString& title, const FieldId& id, QWidget* parent);
    void refresh();

  private:
    SheetHub& hub_;
    QString title_;
    ToneLabel* heading_;
};

/// One load: name, weight or volume and density, place, how much of it is aboard.
class BallastBlock : public QWidget {
    Q_OBJECT
  public:
    BallastBlock(SheetHub& hub, int item, QWidget* parent);
    void refresh();
    void enterName();

  signals:
    void removalRequested();

  private:
    void addHeader(QVBoxLayout* column);
    [[nodiscard]] NumberRow* row(Field field, const QString& whenEmpty);

    SheetHub& hub_;
    int item_;
    NameField* name_;
    QAbstractButton* remove_;
    PointRow* place_;
    ToneLabel* summary_;
};

/// The loads, and the way to more of them.
class BallastSection : public Section {
    Q_OBJECT
  public:
    explicit BallastSection(SheetHub& hub, QWidget* parent = nullptr);
    void refresh();
    /// Enters the name of a load, or the choice of kinds where there is no such load.
    void enterBallast(int item);

  signals:
    void addRequested(const QString& name);
    void removalRequested(int item);

  private:
    void addChooser();

    SheetHub& hub_;
    std::vector<BallastBlock*> blocks_;
    CalmCombo* kinds_ = nullptr;
};

/// Words in a muted or warning tone that wrap, for the body of a section.
[[nodiscard]] ToneLabel* sectionWords(ToneLabel::Tone tone, const QString& text, QWidget* parent);

/// What a load weighs in full and since it was weighed, or why it is not counted.
[[nodiscard]] QString ballastSummary(const EnteredBallast& load, Units units);

}  // namespace bolthole

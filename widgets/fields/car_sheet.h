// The left panel: what was measured, grouped as one walks around the car.
#pragma once

#include <QWidget>
#include <map>
#include <vector>

#include "widgets/fields/sheet_hub.h"
#include "widgets/state/bench_state.h"

class QScrollArea;

namespace bolthole {

class CarSection;
class DrivelineSection;
class LinkSection;
class MeasuredBar;
class NotesSection;
class Section;

/// Every number of a car in fields. Shows a BenchState and emits what a person asks for; changes nothing
/// itself.
class CarSheet : public QWidget {
    Q_OBJECT
  public:
    explicit CarSheet(QWidget* parent = nullptr);

    /// Shows `state`, which is read in place from then on and must outlive the sheet. Touches only what
    /// changed; builds fields anew only where links, holes or driveline came or went.
    void showState(const BenchState& state);

    /// Whether the number has a field here.
    [[nodiscard]] bool hasField(const FieldId& id) const { return hub_->editor(id) != nullptr; }
    /// Unfolds the group of a number, scrolls to its field and enters it. A hole or joint as a whole: axis
    /// -1. Does nothing where the sheet has no such field.
    void focusField(const FieldId& id);
    /// The same without taking the keyboard focus.
    void revealField(const FieldId& id);

    /// Takes what is still being typed, before the car is saved or closed. Text that cannot be read stays.
    void commitPending();
    /// Drops what is still being typed, before another car is shown.
    void discardTyping();
    /// Another car is shown: what was remembered about the last one's numbers is forgotten.
    void startAnew();
    /// Goes to the next starting number, wherever its field stands: asks for it by fieldRequested().
    void goToNextStarting();
    /// Goes to the hole in use of the bracket `step` (1 or -1) further than the one being entered or
    /// selected, links in the sheet's order, chassis before axle, round and round: asks for it by
    /// fieldRequested().
    void goToNextHoles(int step);

    [[nodiscard]] HeightDatum heightDatum() const { return hub_->datum(); }
    /// Whether axle holes are shown from the ground or from the axle's center.
    void setHeightDatum(HeightDatum datum) { hub_->setDatum(datum); }

    [[nodiscard]] QSize sizeHint() const override { return {300, 720}; }

  signals:
    void edited(const Edit& edit);           ///< a whole change
    void selected(const PointId& point);     ///< a field of that hole or joint gained the focus
    void fieldRequested(const FieldId& id);  ///< a number that stands elsewhere is to be entered
    void howToRequested(const FieldId& id);  ///< how to measure it is asked for in its field
    void enteringRequested();                ///< a filled measuring sheet is to be typed in

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    /// What decides which fields there are.
    struct Shape {
        struct OfLink {
            LinkKind kind;
            Side side;
            std::size_t chassisHoles;
            std::size_t axleHoles;
            bool operator==(const OfLink&) const = default;
        };
        std::vector<OfLink> links;
        bool driveline = false;
        bool operator==(const Shape&) const = default;
    };
    [[nodiscard]] static Shape shapeOf(const Car& car);
    void rebuild(const Shape& shape);
    [[nodiscard]] std::map<QString, bool> foldings() const;
    void retireContent();
    void fillContent(QWidget* content);
    void refresh();
    void keepRoom();
    QWidget* unfoldedEditor(const FieldId& id);
    void layOutAround(QWidget& editor);
    [[nodiscard]] std::vector<Section*> sections() const;

    SheetHub* hub_;
    MeasuredBar* measured_;
    QScrollArea* scroll_;
    Shape shape_;
    bool built_ = false;
    CarSection* car_ = nullptr;
    std::vector<LinkSection*> links_;
    DrivelineSection* driveline_ = nullptr;
    Section* travel_ = nullptr;
    NotesSection* notes_ = nullptr;
};

}  // namespace bolthole

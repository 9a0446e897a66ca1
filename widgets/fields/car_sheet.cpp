#include "widgets/fields/car_sheet.h"

#include <QApplication>
#include <QPainter>
#include <QScrollBar>
#include <QVBoxLayout>
#include <algorithm>

#include "widgets/fields/car_sheet_groups.h"
#include "widgets/fields/link_section.h"
#include "widgets/fields/measured_bar.h"
#include "widgets/kit/quiet_scroller.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/theme.h"

namespace bolthole {

namespace {

constexpr int kNarrowest = 270;
constexpr int kWidest = 480;

}  // namespace

CarSheet::CarSheet(QWidget* parent)
    : QWidget(parent),
      hub_(new SheetHub(this)),
      measured_(new MeasuredBar(this)),
      scroll_(new QuietScroller(this)) {
    setMinimumWidth(kNarrowest);
    setMaximumWidth(kWidest);
    setAccessibleName(tr("car sheet"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(measured_);
    column->addWidget(scroll_);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    connect(measured_, &MeasuredBar::nextRequested, this, &CarSheet::goToNextStarting);
    connect(measured_, &MeasuredBar::fieldRequested, this, &CarSheet::fieldRequested);
    connect(hub_, &SheetHub::edited, this, &CarSheet::edited);
    connect(hub_, &SheetHub::uncertaintyRequested, this, &CarSheet::fieldRequested);
    connect(hub_, &SheetHub::howToRequested, this, &CarSheet::howToRequested);
    connect(measured_, &MeasuredBar::enteringRequested, this, &CarSheet::enteringRequested);
    connect(hub_, &SheetHub::selected, this, &CarSheet::selected);
    connect(hub_, &SheetHub::datumChanged, this, &CarSheet::refresh);
}

CarSheet::Shape CarSheet::shapeOf(const Car& car) {
    Shape shape;
    shape.links.reserve(car.links.size());
    for (const Link& link : car.links) {
        shape.links.push_back({link.kind, link.side, link.chassis.holes.size(), link.axle.holes.size()});
    }
    shape.driveline = car.driveline.has_value();
    return shape;
}

void CarSheet::showState(const BenchState& state) {
    hub_->setState(state);
    const Shape shape = shapeOf(state.car);
    if (!built_ || !(shape == shape_)) {
        rebuild(shape);
    }
    hub_->showNumbers();
    refresh();
}

void CarSheet::refresh() {
    if (!built_) {
        return;
    }
    measured_->showCar(hub_->state().car);
    car_->refresh();
    bool renamed = false;
    for (LinkSection* link : links_) {
        renamed = link->refresh() || renamed;
    }
    if (renamed) {
        hub_->refreshWords();
    }
    driveline_->refresh();
    notes_->refresh();
    keepRoom();
}

// No number is clipped: the sheet is as wide as they need.
void CarSheet::keepRoom() {
    constexpr int kScrollBar = 14;  // px
    const int wanted = scroll_->widget()->minimumSizeHint().width() + kScrollBar;
    setMinimumWidth(std::clamp(wanted, kNarrowest, kWidest));
}

std::vector<Section*> CarSheet::sections() const {
    std::vector<Section*> all{car_};
    all.insert(all.end(), links_.begin(), links_.end());
    all.insert(all.end(), {driveline_, travel_, notes_});
    return all;
}

void CarSheet::rebuild(const Shape& shape) {
    const std::optional<FieldId> focused = hub_->targetFocus() ? hub_->targetFocus() : hub_->focused();
    const int scrolled = scroll_->verticalScrollBar()->value();
    const bool was = built_;
    const std::map<QString, bool> unfolded = foldings();
    setUpdatesEnabled(false);
    retireContent();
    auto* content = new QWidget;
    fillContent(content);
    scroll_->setWidget(content);
    content->setAutoFillBackground(false);
    shape_ = shape;
    built_ = true;
    for (Section* section : sections()) {
        const auto found = unfolded.find(section->header()->text());
        section->setUnfolded(found == unfolded.end() || found->second);
    }
    hub_->showNumbers();
    content->layout()->activate();
    scroll_->verticalScrollBar()->setValue(was ? scrolled : 0);
    setUpdatesEnabled(true);
    if (QWidget* editor = focused ? hub_->editor(*focused) : nullptr) {
        editor->setFocus();
        if (auto* field = qobject_cast<QLineEdit*>(editor); field != nullptr && hub_->targetFocus()) {
            field->selectAll();  // as by Tab: what is typed replaces it
        }
        scroll_->ensureWidgetVisible(editor, 0, 60);
    }
}

// By heading: links come and go between the groups.
std::map<QString, bool> CarSheet::foldings() const {
    std::map<QString, bool> unfolded;
    if (built_) {
        for (const Section* section : sections()) {
            unfolded[section->header()->text()] = section->isUnfolded();
        }
    }
    return unfolded;
}

void CarSheet::startAnew() {
    hub_->forgetCar();
    refresh();
}

void CarSheet::goToNextStarting() {
    hub_->commitAll();
    measured_->goOn(hub_->focused());
}

// From a number of a link its own brackets count; from elsewhere the hole selected, else before the first.
void CarSheet::goToNextHoles(int step) {
    hub_->commitAll();
    const Car& car = hub_->state().car;
    const auto count = static_cast<int>(2 * car.links.size());
    if (count == 0) {
        return;
    }
    const PointId& selected = hub_->state().selection;
    const FieldId from = hub_->focused().value_or(FieldId{.link = selected.link, .end = selected.end});
    int at = from.link < 0 ? (step > 0 ? -1 : 0) : 2 * from.link + (from.end == End::axle ? 1 : 0);
    if (from.link >= 0 && from.hole < 0 && hub_->focused()) {
        at = 2 * from.link + (step > 0 ? 1 : 2);  // its length and adjuster stand after both brackets
    }
    const int next = (at + step + count) % count;
    const End end = next % 2 == 0 ? End::chassis : End::axle;
    const int link = next / 2;
    emit fieldRequested(holeField(link, end, car.links[static_cast<std::size_t>(link)].bracket(end).use, 0));
}

void CarSheet::retireContent() {
    hub_->clear();
    links_.clear();
    retireScrolled(*scroll_);
}

void CarSheet::fillContent(QWidget* content) {
    auto* column = new QVBoxLayout(content);
    column->setContentsMargins(10, 10, 4, 16);
    column->setSpacing(14);
    car_ = new CarSection(*hub_, content);
    column->addWidget(car_);
    const auto count = static_cast<int>(hub_->state().car.links.size());
    if (count > 0) {
        column->addWidget(new DatumChoice(*hub_, content));
    }
    for (int link = 0; link < count; ++link) {
        links_.push_back(new LinkSection(*hub_, link, content));
        column->addWidget(links_.back());
        SectionHeader* header = links_.back()->header();
        connect(header, &QAbstractButton::toggled, links_.back(), &LinkSection::refresh);
    }
    column->addWidget(new AddLinkButton(*hub_, content), 0, Qt::AlignLeft);
    driveline_ = new DrivelineSection(*hub_, content);
    travel_ = new TravelSection(*hub_, content);
    notes_ = new NotesSection(*hub_, content);
    for (Section* section : {static_cast<Section*>(driveline_), travel_, static_cast<Section*>(notes_)}) {
        column->addWidget(section);
    }
    column->addStretch(1);
}

QWidget* CarSheet::unfoldedEditor(const FieldId& id) {
    QWidget* editor = built_ ? hub_->editor(id) : nullptr;
    if (editor == nullptr) {
        return nullptr;
    }
    for (Section* section : sections()) {
        if (section->isAncestorOf(editor)) {
            section->setUnfolded(true);
        }
    }
    for (LimitPart* limits : findChildren<LimitPart*>()) {
        if (limits->isAncestorOf(editor)) {
            limits->setUnfolded(true);
        }
    }
    layOutAround(*editor);
    scroll_->ensureWidgetVisible(editor, 0, 60);
    return editor;
}

// At once what the toolkit does when it comes to it: every layout from the editor outward, then the area that
// scrolls.
void CarSheet::layOutAround(QWidget& editor) {
    QWidget* const content = scroll_->widget();
    for (QWidget* around = editor.parentWidget(); around != nullptr; around = around->parentWidget()) {
        if (around->layout() != nullptr) {
            around->layout()->activate();
        }
        if (around == content) {
            break;
        }
    }
    QEvent laidOut(QEvent::LayoutRequest);
    QCoreApplication::sendEvent(scroll_, &laidOut);
    content->layout()->activate();
}

void CarSheet::focusField(const FieldId& id) {
    QWidget* focus = QApplication::focusWidget();
    const bool mine = focus != nullptr && isAncestorOf(focus);
    if (id.axis < 0 && mine && pointOf(id).kind != PointId::Kind::none &&
        pointOf(id) == hub_->state().selection) {
        return;  // the selection came from here: the field that was entered keeps the focus
    }
    QWidget* editor = unfoldedEditor(id);
    if (editor == nullptr) {
        return;
    }
    editor->setFocus(Qt::OtherFocusReason);
    if (auto* field = qobject_cast<QLineEdit*>(editor)) {
        field->selectAll();
    }
}

void CarSheet::revealField(const FieldId& id) {
    unfoldedEditor(id);
}

void CarSheet::commitPending() {
    hub_->commitAll();
    QWidget* focus = focusWidget();
    if (auto* name = qobject_cast<NameField*>(focus)) {
        name->commit();
    } else if (auto* notes = qobject_cast<NotesField*>(focus)) {
        notes->commit();
    }
}

void CarSheet::discardTyping() {
    hub_->restoreAll();
    for (NameField* name : findChildren<NameField*>()) {
        name->restore();
    }
    for (NotesField* notes : findChildren<NotesField*>()) {
        notes->restore();
    }
}

void CarSheet::paintEvent(QPaintEvent*) {
    QPainter(this).fillRect(rect(), theme().panel);
}

}  // namespace bolthole

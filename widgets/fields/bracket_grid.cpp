#include "widgets/fields/bracket_grid.h"

#include <QGridLayout>
#include <QMenu>
#include <QPainter>
#include <QToolButton>
#include <algorithm>

#include "geometry/car/starting_numbers.h"
#include "geometry/edits/next_hole.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"

namespace bolthole {

namespace {

/// Reading order of the axes: forward, height, sideways.
constexpr int kAxes[] = {0, 2, 1};

/// The side of the part a point belongs to; center for joints and loads.
Side sideOf(const Car& car, const FieldId& id) {
    if (id.field == Field::mountAt) {
        return car.springs[static_cast<std::size_t>(id.item)].side;
    }
    return id.link < 0 ? Side::center : car.links[static_cast<std::size_t>(id.link)].side;
}

}  // namespace

void addPointHeadings(QGridLayout* grid, int row, int column, Side side, QWidget* parent) {
    for (const int axis : kAxes) {
        auto* heading = new ToneLabel(ToneLabel::Tone::muted, axisWord(axis, side), parent);
        heading->setAlignment(Qt::AlignRight | Qt::AlignBottom);
        heading->setContentsMargins(0, 0, 5, 0);
        grid->addWidget(heading, row, column++);
    }
}

void addPointFields(SheetHub& hub, QGridLayout* grid, int row, int column, FieldId id, QWidget* parent) {
    auto* note = new NoteLabel(parent);
    for (const int axis : kAxes) {
        id.axis = axis;
        NumberField* field = hub.makeField(id, parent);
        field->setProperty("compact", true);
        field->setFont(textFont(TextSize::small));
        field->setLeastText(QStringLiteral("21 13/16"));  // numbers go before names where it is narrow
        note->watch(field, axisWord(axis, sideOf(hub.state().car, id)));
        grid->addWidget(field, row, column++);
    }
    grid->addWidget(note, row + 1, 0, 1, column);
}

BracketGrid::BracketGrid(SheetHub& hub, int link, End end, QWidget* parent)
    : QWidget(parent), hub_(hub), link_(link), end_(end) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 2, 0, 0);
    grid->setHorizontalSpacing(3);
    grid->setVerticalSpacing(3);
    grid->setColumnStretch(1, 4);
    for (int column = 2; column <= 4; ++column) {
        grid->setColumnStretch(column, 4);
    }
    addHeading(grid);
    for (int hole = 0; hole < static_cast<int>(bracket().holes.size()); ++hole) {
        addRow(grid, hole);
    }
    refresh();
}

const Link& BracketGrid::link() const {
    return hub_.state().car.links[static_cast<std::size_t>(link_)];
}

void BracketGrid::addHeading(QGridLayout* grid) {
    auto* line = new QHBoxLayout;
    line->setSpacing(2);
    title_ = new ToneLabel(ToneLabel::Tone::muted, QString(), this);
    title_->setContentsMargins(4, 0, 0, 0);
    line->addWidget(title_, 1);
    const QString of =
        QStringLiteral("%1, %2").arg(linkName(hub_.state().car, link_), bracketTitle(end_).toLower());
    QAbstractButton* add =
        smallButton(QStringLiteral("+"), tr("Add a hole: %1").arg(of),
                    tr("Add a hole next to the last one. The bolt stays where it is."), this);
    add->setEnabled(bracket().holes.size() < kMaxHoles);
    connect(add, &QAbstractButton::clicked, this, &BracketGrid::addHole);
    QAbstractButton* remove = smallButton(QStringLiteral("−"), tr("Remove a hole: %1").arg(of),
                                          tr("Remove a hole; pick which one from the list."), this);
    keepPlace(remove, bracket().holes.size() > 1);
    auto* menu = new QMenu(remove);
    connect(menu, &QMenu::aboutToShow, this, [this, menu] { fillRemoveMenu(menu); });
    connect(remove, &QAbstractButton::clicked, this,
            [remove, menu] { menu->popup(remove->mapToGlobal(QPoint(0, remove->height()))); });
    line->addWidget(add);
    line->addWidget(remove);
    grid->addLayout(line, 0, 0, 1, 5);
    addPointHeadings(grid, 1, 2, link().side, this);
}

void BracketGrid::addRow(QGridLayout* grid, int hole) {
    const int row = 2 + 2 * hole;
    auto* mark = new HoleMark(this);
    mark->setToolTip(wrappedToolTip(tr("Bolt the link into this hole.")));
    connect(mark, &QAbstractButton::clicked, this, [this, hole] {
        if (bracket().use != hole) {
            hub_.request(UseHole{link_, end_, hole});
        }
    });
    grid->addWidget(mark, row, 0);
    auto* name = new NameField(this);
    name->setProperty("nameLike", true);
    name->setMinimumWidth(24);
    connect(name, &NameField::renamed, this, [this, hole](const std::string& typed) {
        hub_.request(RenameHole{link_, end_, hole, typed});
    });
    connect(name, &NameField::entered, this, [this, hole] { hub_.select(holeField(link_, end_, hole, 0)); });
    grid->addWidget(name, row, 1);
    addPointFields(hub_, grid, row, 2, holeField(link_, end_, hole, 0), this);
    rows_.push_back({mark, name, std::string(1, '\0')});
}

void BracketGrid::addHole() {
    Hole added = nextHole(bracket(), hub_.state().style.units);
    startFrom(added);
    const auto place = static_cast<int>(bracket().holes.size());
    hub_.request(AddHole{link_, end_, added}, holeField(link_, end_, place, 0));
}

void BracketGrid::fillRemoveMenu(QMenu* menu) {
    menu->clear();
    for (int hole = 0; hole < static_cast<int>(bracket().holes.size()); ++hole) {
        const QString in = bracket().use == hole ? tr(" (current)") : QString();
        QString name = holeName(bracket(), hole);
        name.replace(u'&', QStringLiteral("&&"));
        connect(menu->addAction(tr("Remove '%1'%2").arg(name, in)), &QAction::triggered, this, [this, hole] {
            const FieldId next = holeField(link_, end_, std::max(0, hole - 1), 0);
            hub_.request(RemoveHole{link_, end_, hole}, next);
        });
    }
}

bool BracketGrid::refresh() {
    const BenchState& state = hub_.state();
    const Role role = roleOf(link(), state.car.rearTireRadius);
    const QString mark = unitText(Quantity::length, state.style.units);
    const bool center = end_ == End::axle && hub_.datum() == HeightDatum::axleCenter;
    title_->showText(QStringLiteral("%1, %2%3")
                         .arg(bracketTitle(end_), mark, center ? tr(", from axle center") : QString()));
    const PointId& selection = state.selection;
    const bool mine =
        selection.kind == PointId::Kind::hole && selection.link == link_ && selection.end == end_;
    if (const int selected = mine ? selection.hole : -1; selected != selectedHole_) {
        selectedHole_ = selected;
        update();
    }
    bool renamed = false;
    for (std::size_t hole = 0; hole < rows_.size(); ++hole) {
        Row& row = rows_[hole];
        row.mark->showState(bracket().use == static_cast<int>(hole), role);
        const std::string& name = bracket().holes[hole].name;
        if (row.shownName == name && shownLinkName_ == link().name) {
            continue;
        }
        renamed = true;
        row.shownName = name;
        row.name->showName(name);
        row.name->setToolTip(wrappedToolTip(
            tr("%1: the hole's name, as it is spoken of in the shop.").arg(QString::fromStdString(name))));
        const QString spoken = wordsFor(state.car, holeField(link_, end_, static_cast<int>(hole), 0)).name;
        const QString place = spoken.left(spoken.lastIndexOf(u','));
        row.mark->setAccessibleName(tr("%1, bolted here").arg(place));
        row.name->setAccessibleName(tr("%1, name").arg(place));
    }
    shownLinkName_ = link().name;
    return renamed;
}

void BracketGrid::paintEvent(QPaintEvent*) {
    if (selectedHole_ < 0 || selectedHole_ >= static_cast<int>(rows_.size())) {
        return;
    }
    const Row& row = rows_[static_cast<std::size_t>(selectedHole_)];
    const QRect line = row.mark->geometry().united(row.name->geometry());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().grid);
    painter.drawRoundedRect(QRect(0, line.top() - 1, width(), line.height() + 2), 4, 4);
}

}  // namespace bolthole

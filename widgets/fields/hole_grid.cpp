#include "widgets/fields/hole_grid.h"

#include <QGridLayout>
#include <QMenu>
#include <QToolButton>

#include "widgets/kit/theme.h"
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

HoleGrid::HoleGrid(SheetHub& hub, QWidget* parent) : QWidget(parent), hub_(hub) {}

void HoleGrid::build(const Words& words) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 2, 0, 0);
    grid->setHorizontalSpacing(3);
    grid->setVerticalSpacing(3);
    for (int column = 1; column <= 4; ++column) {
        grid->setColumnStretch(column, 4);
    }
    addHeading(grid, words);
    for (int hole = 0; hole < static_cast<int>(bracket().holes.size()); ++hole) {
        addRow(grid, hole, words.boltHere);
    }
}

void HoleGrid::addHeading(QGridLayout* grid, const Words& words) {
    auto* line = new QHBoxLayout;
    line->setSpacing(2);
    title_ = new ToneLabel(ToneLabel::Tone::muted, QString(), this);
    title_->setContentsMargins(4, 0, 0, 0);
    line->addWidget(title_, 1);
    QAbstractButton* add =
        smallButton(QStringLiteral("+"), tr("Add a hole: %1").arg(words.of),
                    tr("Add a hole next to the last one. The bolt stays where it is."), this);
    add->setEnabled(bracket().holes.size() < kMaxHoles);
    connect(add, &QAbstractButton::clicked, this, [this] { addHole(); });
    QAbstractButton* remove = smallButton(QStringLiteral("−"), tr("Remove a hole: %1").arg(words.of),
                                          tr("Remove a hole; pick which one from the list."), this);
    keepPlace(remove, bracket().holes.size() > 1);
    auto* menu = new QMenu(remove);
    connect(menu, &QMenu::aboutToShow, this, [this, menu] { fillRemoveMenu(menu); });
    connect(remove, &QAbstractButton::clicked, this,
            [remove, menu] { menu->popup(remove->mapToGlobal(QPoint(0, remove->height()))); });
    line->addWidget(add);
    line->addWidget(remove);
    grid->addLayout(line, 0, 0, 1, 5);
    addPointHeadings(grid, 1, 2, words.side, this);
}

void HoleGrid::addRow(QGridLayout* grid, int hole, const QString& boltHere) {
    const int row = 2 + 2 * hole;
    auto* mark = new HoleMark(this);
    mark->setToolTip(wrappedToolTip(boltHere));
    connect(mark, &QAbstractButton::clicked, this, [this, hole] {
        if (bracket().use != hole) {
            useHole(hole);
        }
    });
    grid->addWidget(mark, row, 0);
    auto* name = new NameField(this);
    name->setProperty("nameLike", true);
    name->setMinimumWidth(24);
    connect(name, &NameField::renamed, this,
            [this, hole](const std::string& typed) { renameHole(hole, typed); });
    connect(name, &NameField::entered, this, [this, hole] { nameEntered(hole); });
    grid->addWidget(name, row, 1);
    addPointFields(hub_, grid, row, 2, fieldOf(hole), this);
    rows_.push_back({mark, name, std::string(1, '\0')});
}

void HoleGrid::fillRemoveMenu(QMenu* menu) {
    menu->clear();
    for (int hole = 0; hole < static_cast<int>(bracket().holes.size()); ++hole) {
        const QString in = bracket().use == hole ? tr(" (current)") : QString();
        QString name = holeName(bracket(), hole);
        name.replace(u'&', QStringLiteral("&&"));
        connect(menu->addAction(tr("Remove '%1'%2").arg(name, in)), &QAction::triggered, this,
                [this, hole] { removeHole(hole); });
    }
}

void HoleGrid::forgetNames() {
    for (Row& row : rows_) {
        row.shownName = std::string(1, '\0');
    }
}

bool HoleGrid::refreshRows(Role role) {
    bool renamed = false;
    for (std::size_t hole = 0; hole < rows_.size(); ++hole) {
        Row& row = rows_[hole];
        row.mark->showState(bracket().use == static_cast<int>(hole), role);
        if (row.shownName != bracket().holes[hole].name) {
            nameRow(row, static_cast<int>(hole));
            renamed = true;
        }
    }
    return renamed;
}

void HoleGrid::nameRow(Row& row, int hole) {
    row.shownName = bracket().holes[static_cast<std::size_t>(hole)].name;
    row.name->showName(row.shownName);
    row.name->setToolTip(wrappedToolTip(tr("%1: the hole's name, as it is spoken of in the shop.")
                                            .arg(QString::fromStdString(row.shownName))));
    const QString spoken = wordsFor(hub_.state().car, fieldOf(hole)).name;
    const QString place = spoken.left(spoken.lastIndexOf(u','));
    row.mark->setAccessibleName(tr("%1, bolted here").arg(place));
    row.name->setAccessibleName(tr("%1, name").arg(place));
}

}  // namespace bolthole

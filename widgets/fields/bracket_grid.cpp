#include "widgets/fields/bracket_grid.h"

#include <QPainter>
#include <algorithm>

#include "geometry/car/starting_numbers.h"
#include "geometry/edits/next_hole.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/field_words.h"

namespace bolthole {

BracketGrid::BracketGrid(SheetHub& hub, int link, End end, QWidget* parent)
    : HoleGrid(hub, parent), link_(link), end_(end) {
    build({QStringLiteral("%1, %2").arg(linkName(hub.state().car, link_), bracketTitle(end_).toLower()),
           this->link().side, tr("Bolt the link into this hole.")});
    refresh();
}

const Link& BracketGrid::link() const {
    return hub().state().car.links[static_cast<std::size_t>(link_)];
}

void BracketGrid::renameHole(int hole, const std::string& name) {
    hub().request(RenameHole{link_, end_, hole, name});
}

void BracketGrid::addHole() {
    Hole added = nextHole(bracket(), hub().state().style.units);
    startFrom(added);
    const auto place = static_cast<int>(bracket().holes.size());
    hub().request(AddHole{link_, end_, added}, fieldOf(place));
}

void BracketGrid::removeHole(int hole) {
    hub().request(RemoveHole{link_, end_, hole}, fieldOf(std::max(0, hole - 1)));
}

bool BracketGrid::refresh() {
    const BenchState& state = hub().state();
    const QString mark = unitText(Quantity::length, state.style.units);
    const bool center = end_ == End::axle && hub().datum() == HeightDatum::axleCenter;
    title()->showText(QStringLiteral("%1, %2%3")
                          .arg(bracketTitle(end_), mark, center ? tr(", from axle center") : QString()));
    const PointId& selection = state.selection;
    const bool mine =
        selection.kind == PointId::Kind::hole && selection.link == link_ && selection.end == end_;
    if (const int selected = mine ? selection.hole : -1; selected != selectedHole_) {
        selectedHole_ = selected;
        update();
    }
    if (shownLinkName_ != link().name) {
        shownLinkName_ = link().name;
        forgetNames();
    }
    return refreshRows(roleOf(link(), state.car.rearTireRadius));
}

void BracketGrid::paintEvent(QPaintEvent*) {
    if (selectedHole_ < 0 || selectedHole_ >= static_cast<int>(rows().size())) {
        return;
    }
    const Row& row = rows()[static_cast<std::size_t>(selectedHole_)];
    const QRect line = row.mark->geometry().united(row.name->geometry());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme().grid);
    painter.drawRoundedRect(QRect(0, line.top() - 1, width(), line.height() + 2), 4, 4);
}

}  // namespace bolthole

// The rows behind the log's table.
#include "widgets/kit/number_field.h"
#include "widgets/kit/pens.h"
#include "widgets/kit/theme.h"
#include "widgets/kit/unit_text.h"
#include "widgets/pages/days/pass_table.h"
#include "widgets/pages/days/pass_words.h"

namespace bolthole {

namespace {

bool isWords(PassColumn column) {
    return column == PassColumn::setup || column == PassColumn::changes || column == PassColumn::seen;
}

/// Whether a heading stands over a pass: its day, place or surface is another than that of the one before.
bool beginsGroup(const std::vector<Pass>& passes, std::size_t row) {
    if (row == 0) {
        return true;
    }
    const Pass& before = passes[row - 1];
    const Pass& pass = passes[row];
    return before.date != pass.date || before.place != pass.place ||
           before.surface.kind != pass.surface.kind || before.surface.name != pass.surface.name;
}

QString pressuresTip(const Pass& pass, Units units) {
    QStringList lines;
    for (const PassField field : {PassField::leftFrontPressure, PassField::rightFrontPressure,
                                  PassField::leftRearPressure, PassField::rightRearPressure}) {
        if (const OptionalNumber& value = numberOf(pass, field)) {
            lines << labelOf(field) + QStringLiteral(": ") + passNumberWords(value, field, units);
        }
    }
    return lines.join(QLatin1Char('\n'));
}

}  // namespace

PassTableModel::PassTableModel(const PassBook& book, QObject* parent)
    : QAbstractTableModel(parent), book_(book) {}

void PassTableModel::refresh() {
    beginResetModel();
    rows_.clear();
    rowOf_.clear();
    for (std::size_t pass = 0; pass < book_.passes().size(); ++pass) {
        if (beginsGroup(book_.passes(), pass)) {
            rows_.push_back({pass, true});
        }
        rowOf_.push_back(static_cast<int>(rows_.size()));
        rows_.push_back({pass, false});
    }
    endResetModel();
}

int PassTableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int PassTableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : kPassColumns;
}

std::optional<std::size_t> PassTableModel::passAt(int row) const {
    if (row < 0 || static_cast<std::size_t>(row) >= rows_.size()) {
        return std::nullopt;
    }
    const Row& at = rows_[static_cast<std::size_t>(row)];
    return at.isHeading ? std::nullopt : std::optional(at.pass);
}

std::optional<int> PassTableModel::rowOf(std::size_t pass) const {
    return pass < rowOf_.size() ? std::optional(rowOf_[pass]) : std::nullopt;
}

QString PassTableModel::headingAt(int row) const {
    if (row < 0 || static_cast<std::size_t>(row) >= rows_.size() ||
        !rows_[static_cast<std::size_t>(row)].isHeading) {
        return {};
    }
    return dayHeading(book_.passes()[rows_[static_cast<std::size_t>(row)].pass], book_.units());
}

Qt::ItemFlags PassTableModel::flags(const QModelIndex& index) const {
    return passAt(index.row()) ? Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren
                               : Qt::ItemIsEnabled | Qt::ItemNeverHasChildren;
}

QString PassTableModel::text(std::size_t at, PassColumn column) const {
    const Pass& pass = book_.passes()[at];
    switch (column) {
        case PassColumn::number:
            return QString::number(pass.number);
        case PassColumn::time:
            return QString::fromStdString(pass.time);
        case PassColumn::setup:
            return book_.letterOf(at);
        case PassColumn::changes: {
            const QString& changes = book_.changes(at);
            return at == 0 ? tr("first setup") : changes.isEmpty() ? QStringLiteral("·") : changes;
        }
        case PassColumn::rearPressure:
            return axlePressures(pass.pressures.leftRear, pass.pressures.rightRear, book_.units());
        case PassColumn::rebound: {
            const Car* setup = book_.setupOf(at);
            return setup == nullptr ? QString() : clicksText(*setup);
        }
        case PassColumn::launchRpm:
            return passNumberText(pass.launchRpm, PassField::launchRpm, book_.units());
        case PassColumn::sixtyFoot:
            return passNumberText(pass.sixtyFoot, PassField::sixtyFoot, book_.units());
        case PassColumn::threeThirty:
            return passNumberText(pass.times.threeThirty, PassField::threeThirty, book_.units());
        case PassColumn::seen:
            break;
    }
    QStringList parts{seenText(pass), QString::fromStdString(pass.note)};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

QString PassTableModel::spoken(std::size_t at) const {
    const Pass& pass = book_.passes()[at];
    const QString words =
        tr("pass %1 of %2, setup %3").arg(pass.number).arg(dayText(pass.date), book_.letterOf(at));
    return pass.struck ? words + tr(", struck") : words;
}

QVariant PassTableModel::color(std::size_t at, PassColumn column) const {
    if (book_.passes()[at].struck) {
        return over(theme().muted, 0.6, theme().card);
    }
    if (column == PassColumn::changes) {
        return at > 0 && book_.changes(at).isEmpty() ? theme().muted : theme().focus;
    }
    return column == PassColumn::time || column == PassColumn::number ? theme().muted : theme().ink;
}

QVariant PassTableModel::data(const QModelIndex& index, int role) const {
    const std::optional<std::size_t> at = passAt(index.row());
    if (!at) {
        const bool isFirst = index.column() == 0;
        return isFirst && (role == Qt::DisplayRole || role == Qt::ToolTipRole) ? headingAt(index.row())
                                                                               : QVariant();
    }
    const auto column = static_cast<PassColumn>(index.column());
    switch (role) {
        case Qt::DisplayRole:
            return text(*at, column);
        case Qt::ToolTipRole:
            if (column == PassColumn::rearPressure) {
                return pressuresTip(book_.passes()[*at], book_.units());
            }
            return isWords(column) ? wrappedToolTip(text(*at, column)) : QString();
        case Qt::TextAlignmentRole:
            return QVariant::fromValue(isWords(column) ? Qt::AlignLeft | Qt::AlignVCenter
                                                       : Qt::AlignRight | Qt::AlignVCenter);
        case Qt::FontRole: {
            const bool strong = column == PassColumn::sixtyFoot || column == PassColumn::setup;
            QFont font = textFont(TextSize::body, strong);
            font.setStrikeOut(book_.passes()[*at].struck && column == PassColumn::sixtyFoot);
            return font;
        }
        case Qt::ForegroundRole:
            return color(*at, column);
        case Qt::AccessibleTextRole:
            return column == PassColumn::number ? spoken(*at) : text(*at, column);
        default:
            return {};
    }
}

QVariant PassTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= kPassColumns) {
        return {};
    }
    const auto column = static_cast<PassColumn>(section);
    if (role == Qt::TextAlignmentRole) {
        return QVariant::fromValue(isWords(column) ? Qt::AlignLeft | Qt::AlignVCenter
                                                   : Qt::AlignRight | Qt::AlignVCenter);
    }
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole) {
        return {};
    }
    const bool isTip = role == Qt::ToolTipRole;
    switch (column) {
        case PassColumn::number:
            return isTip ? tr("Number of the pass in its day") : QStringLiteral("#");
        case PassColumn::time:
            return isTip ? tr("Time of day") : tr("time");
        case PassColumn::setup:
            return isTip ? tr("A letter for each setup: the car, the tire pressures and the launch rpm")
                         : tr("setup");
        case PassColumn::changes:
            return isTip ? tr("Since the pass before, by comparison, never typed") : tr("what changed");
        case PassColumn::rearPressure:
            return isTip ? tr("Rear tire pressures, left and right where they differ")
                         : tr("rear %1").arg(passUnitText(PassField::leftRearPressure, book_.units()));
        case PassColumn::rebound:
            return isTip ? tr("Clicks of rebound, front and rear, of the setup it was run with")
                         : tr("rebound");
        case PassColumn::launchRpm:
            return isTip ? tr("Launch rpm") : tr("rpm");
        case PassColumn::sixtyFoot:
            return isTip ? tr("60 ft time, s") : tr("60 ft");
        case PassColumn::threeThirty:
            return isTip ? tr("330 ft time, s") : tr("330 ft");
        case PassColumn::seen:
            break;
    }
    return isTip ? tr("What was seen, and the note") : tr("seen");
}

}  // namespace bolthole

#include "tests/support/pdf_page.h"

#include <QHash>
#include <QRegularExpression>
#include <QTransform>
#include <algorithm>
#include <cmath>

namespace bolthole::test {

namespace {

constexpr double kMillimetresPerPoint = 25.4 / 72;

/// The objects of a file, found by their numbers.
class Objects {
  public:
    explicit Objects(const QByteArray& bytes) : bytes_(bytes) {
        static const QRegularExpression head(QStringLiteral("(?:^|\\n)(\\d+) 0 obj\\s"));
        auto found = head.globalMatch(QString::fromLatin1(bytes));
        while (found.hasNext()) {
            const QRegularExpressionMatch match = found.next();
            places_[match.captured(1).toInt()] = match.capturedEnd();
        }
    }
    [[nodiscard]] QList<int> numbers() const {
        QList<int> numbers = places_.keys();
        std::ranges::sort(numbers);
        return numbers;
    }
    /// What stands between "obj" and the stream or the end.
    [[nodiscard]] QString dictionary(int number) const {
        const qsizetype start = places_.value(number, bytes_.size());
        const qsizetype end = bytes_.indexOf("endobj", start);
        const qsizetype stream = bytes_.indexOf("stream\n", start);
        return QString::fromLatin1(bytes_.mid(start, (stream >= 0 && stream < end ? stream : end) - start));
    }
    /// The number of the object a key of a dictionary refers to, or -1.
    [[nodiscard]] static int reference(const QString& dictionary, const QString& key) {
        const QRegularExpression pattern('/' + key + QStringLiteral(" (\\d+) 0 R"));
        const QRegularExpressionMatch match = pattern.match(dictionary);
        return match.hasMatch() ? match.captured(1).toInt() : -1;
    }
    [[nodiscard]] QByteArray stream(int number) const {
        const QString words = dictionary(number);
        const qsizetype start = bytes_.indexOf("stream\n", places_.value(number)) + 7;
        const QByteArray raw = bytes_.mid(start, bytes_.indexOf("endstream", start) - start);
        if (!words.contains(QStringLiteral("FlateDecode"))) {
            return raw;
        }
        return qUncompress(QByteArray("\0\x10\0\0", 4) + raw);  // it wants a guess of the size in front
    }

  private:
    const QByteArray& bytes_;
    QHash<int, qsizetype> places_;
};

/// From glyph numbers to characters, as a font's ToUnicode map says.
QHash<uint, QChar> charactersOf(const QString& map) {
    QHash<uint, QChar> characters;
    static const QRegularExpression range(
        QStringLiteral("<([0-9A-F]{4})> <[0-9A-F]{4}> (\\[[^\\]]*\\]|<[0-9A-F]{4}>)"));
    static const QRegularExpression code(QStringLiteral("<([0-9A-F]{4})>"));
    auto ranges = range.globalMatch(map);
    while (ranges.hasNext()) {
        const QRegularExpressionMatch one = ranges.next();
        uint glyph = one.captured(1).toUInt(nullptr, 16);
        auto codes = code.globalMatch(one.captured(2));
        while (codes.hasNext()) {
            const uint unicode = codes.next().captured(1).toUInt(nullptr, 16);
            characters[glyph++] = unicode == '\t' ? QChar(' ') : QChar(unicode);  // one glyph for both
        }
    }
    return characters;
}

/// Plays a page's content.
class Player {
  public:
    Player(const Objects& objects, PdfPage& page) : objects_(objects), page_(page) {}
    void play(const QByteArray& content);

  private:
    struct State {
        QTransform transform;
        double width = 1;
        int fill = 0;
    };
    void perform(const QByteArray& word);
    void performPath(const QByteArray& word);
    void performText(const QByteArray& word);
    void stroke();
    void fill();
    void show(const QByteArray& hex);
    [[nodiscard]] double number(qsizetype fromLast) const {
        return operands_.value(operands_.size() - fromLast).toDouble();
    }
    [[nodiscard]] QPointF point(qsizetype fromLast) const {
        return state_.transform.map(QPointF(number(fromLast), number(fromLast - 1)));
    }
    [[nodiscard]] QPointF onPaper(QPointF inPoints) const {
        return {inPoints.x() * kMillimetresPerPoint,
                page_.size.height() - inPoints.y() * kMillimetresPerPoint};
    }
    [[nodiscard]] double scale() const { return std::sqrt(std::abs(state_.transform.determinant())); }

    const Objects& objects_;
    PdfPage& page_;
    QList<QByteArray> operands_;
    State state_;
    std::vector<State> kept_;
    std::vector<QLineF> path_;      // points
    std::vector<PdfCurve> curves_;  // points
    QPointF start_;
    QPointF current_;
    QHash<QByteArray, QHash<uint, QChar>> fonts_;
    QByteArray font_;
    double size_ = 0;
    QTransform text_;
};

void Player::play(const QByteArray& content) {
    for (const QByteArray& word : content.simplified().split(' ')) {
        const char first = word.isEmpty() ? ' ' : word.front();
        if (first == '/' || first == '<' || first == '-' || first == '.' || (first >= '0' && first <= '9')) {
            operands_ << word;
            continue;
        }
        perform(word);
        operands_.clear();
    }
}

void Player::perform(const QByteArray& word) {
    if (word == "q") {
        kept_.push_back(state_);
    } else if (word == "Q" && !kept_.empty()) {
        state_ = kept_.back();
        kept_.pop_back();
    } else if (word == "cm") {
        state_.transform =
            QTransform(number(6), number(5), number(4), number(3), number(2), number(1)) * state_.transform;
    } else if (word == "w") {
        state_.width = number(1);
    } else if (word == "scn" && operands_.size() >= 3) {
        state_.fill = static_cast<int>(std::lround(255 * number(1)));
    } else if (word.startsWith('T') || word == "BT") {
        performText(word);
    } else {
        performPath(word);
    }
}

void Player::performPath(const QByteArray& word) {
    const auto lineTo = [this](QPointF to) {
        path_.emplace_back(current_, to);
        current_ = to;
    };
    if (word == "m") {
        start_ = current_ = point(2);
    } else if (word == "l") {
        lineTo(point(2));
    } else if (word == "c") {
        curves_.push_back({current_, point(6), point(4), point(2)});
        lineTo(point(2));
    } else if (word == "h") {
        lineTo(start_);
    } else if (word == "re") {
        const QRectF box(number(4), number(3), number(2), number(1));
        start_ = current_ = state_.transform.map(box.topLeft());
        for (const QPointF corner : {box.topRight(), box.bottomRight(), box.bottomLeft(), box.topLeft()}) {
            lineTo(state_.transform.map(corner));
        }
    } else if (word == "S" || word == "s") {
        stroke();
    } else if (word == "f" || word == "f*") {
        fill();
    } else if (word == "B" || word == "B*" || word == "b" || word == "b*") {
        fill();
        stroke();
    }
    if (word != "m" && word != "l" && word != "c" && word != "h" && word != "re" && !word.startsWith('W')) {
        path_.clear();
        curves_.clear();
    }
}

void Player::stroke() {
    PdfStroke stroke{state_.width * scale() * kMillimetresPerPoint, {}, {}};
    for (const QLineF& line : path_) {
        stroke.lines.emplace_back(onPaper(line.p1()), onPaper(line.p2()));
    }
    for (const PdfCurve& curve : curves_) {
        stroke.curves.push_back({onPaper(curve[0]), onPaper(curve[1]), onPaper(curve[2]), onPaper(curve[3])});
    }
    page_.strokes.push_back(std::move(stroke));
}

void Player::fill() {
    QRectF box;
    for (const QLineF& line : path_) {
        box |= QRectF(onPaper(line.p1()), onPaper(line.p2())).normalized();
    }
    page_.fills.push_back({box, state_.fill});
}

void Player::performText(const QByteArray& word) {
    if (word == "BT") {
        page_.texts.push_back({});
    } else if (word == "Tf") {
        font_ = operands_.value(0).mid(1);
        size_ = number(1);
        if (!fonts_.contains(font_)) {
            const int map =
                Objects::reference(objects_.dictionary(font_.mid(1).toInt()), QStringLiteral("ToUnicode"));
            fonts_[font_] = charactersOf(QString::fromLatin1(objects_.stream(map)));
        }
    } else if (word == "Tm") {
        text_ = QTransform(number(6), number(5), number(4), number(3), number(2), number(1));
        PdfText& run = page_.texts.back();
        run.size = size_ * std::abs(number(3)) * scale() * kMillimetresPerPoint;
        run.at = onPaper((text_ * state_.transform).map(QPointF(0, 0)));
    } else if (word == "Td" && page_.texts.back().text.isEmpty()) {  // else on to the run's next character
        text_ = QTransform::fromTranslate(number(2), number(1)) * text_;
        page_.texts.back().at = onPaper((text_ * state_.transform).map(QPointF(0, 0)));
    } else if (word == "Tj") {
        show(operands_.value(operands_.size() - 1));
    }
}

void Player::show(const QByteArray& hex) {
    for (qsizetype at = 1; at + 4 < hex.size(); at += 4) {
        page_.texts.back().text += fonts_[font_].value(hex.mid(at, 4).toUInt(nullptr, 16), QChar('?'));
    }
}

}  // namespace

const PdfText* PdfPage::find(const QString& text) const {
    const auto found =
        std::ranges::find_if(texts, [&](const PdfText& run) { return run.text.contains(text); });
    return found == texts.end() ? nullptr : &*found;
}

QString PdfPage::allText() const {
    QString all;
    for (const PdfText& run : texts) {
        all += run.text + '\n';
    }
    return all;
}

std::vector<PdfPage> readPdf(const QByteArray& bytes) {
    const Objects objects(bytes);
    std::vector<PdfPage> pages;
    static const QRegularExpression isPage(QStringLiteral("/Type /Page\\s"));
    static const QRegularExpression box(QStringLiteral("/MediaBox \\[0 0 ([0-9.]+) ([0-9.]+)\\]"));
    for (const int number : objects.numbers()) {
        const QString words = objects.dictionary(number);
        if (!isPage.match(words).hasMatch()) {
            continue;
        }
        PdfPage& page = pages.emplace_back();
        const QRegularExpressionMatch size = box.match(words);
        page.size = QSizeF(size.captured(1).toDouble(), size.captured(2).toDouble()) * kMillimetresPerPoint;
        Player(objects, page).play(objects.stream(Objects::reference(words, QStringLiteral("Contents"))));
    }
    return pages;
}

}  // namespace bolthole::test

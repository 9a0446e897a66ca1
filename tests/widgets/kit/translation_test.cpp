// Texts of so many things take the form that their language has for so many.
#include "widgets/kit/translation.h"

#include <gtest/gtest.h>

#include <QTranslator>

namespace bolthole {
namespace {

/// A language with a form of its own for two.
class WithADual : public QTranslator {
  public:
    [[nodiscard]] QString translate(const char* /*context*/, const char* source, const char* /*remark*/,
                                    int count) const override {
        return qstrcmp(source, "%n bolts") == 0
                   ? count == 2 ? QStringLiteral("%n dual") : QStringLiteral("%n plural")
                   : QString();
    }
    [[nodiscard]] bool isEmpty() const override { return false; }
};

TEST(Translation, CountsTakeTheFormOfTheirLanguage) {
    EXPECT_EQ(tr("%n bolts", 4).toStdString(), "4 bolts");
    WithADual language;
    QCoreApplication::installTranslator(&language);
    EXPECT_EQ(tr("%n bolts", 2).toStdString(), "2 dual");
    EXPECT_EQ(tr("%n bolts", 4).toStdString(), "4 plural");
    QCoreApplication::removeTranslator(&language);
}

}  // namespace
}  // namespace bolthole

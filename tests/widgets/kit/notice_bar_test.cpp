// The notice across the top: what went wrong stands out, what was done does not.
#include "widgets/kit/notice_bar.h"

#include <gtest/gtest.h>

#include <QImage>

#include "widgets/kit/theme.h"

namespace bolthole {
namespace {

TEST(NoticeBar, WhatWasDoneHasNotTheColorOfAProblem) {
    for (const Appearance appearance : {Appearance::light, Appearance::dark}) {
        ThemeKeeper::instance().choose(appearance);
        NoticeBar bar;
        bar.resize(400, 40);
        const auto stripe = [&bar] { return bar.grab().toImage().pixelColor(1, 20).rgb(); };
        bar.say(QStringLiteral("went wrong"));
        EXPECT_EQ(stripe(), theme().problem.rgb());
        bar.tell(QStringLiteral("Wall chart saved"));
        EXPECT_EQ(stripe(), theme().focus.rgb());
        EXPECT_EQ(bar.text(), QStringLiteral("Wall chart saved"));
        EXPECT_EQ(bar.accessibleDescription(), bar.text());
        bar.say(QStringLiteral("went wrong"));
        EXPECT_EQ(stripe(), theme().problem.rgb());
    }
}

}  // namespace
}  // namespace bolthole

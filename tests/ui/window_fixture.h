// SPDX-License-Identifier: MIT
#pragma once

#include "tests/ui/patience.h"
#include "tests/ui/samples.h"
#include "ui/findings/findings_panel.h"
#include "ui/findings/verdict_strip.h"
#include "ui/window/main_window.h"
#include "ui/window/tuning_view.h"

#include <QApplication>
#include <QLabel>
#include <QSlider>
#include <QStyle>
#include <QStyleOptionSlider>
#include <QTabWidget>
#include <QTest>
#include <gtest/gtest.h>
#include <qwt_plot_curve.h>

#include <functional>
#include <vector>

namespace stillbay::ui {

struct Window : testing::Test {
    Window()
    {
        window.resize(1280, 800);
        window.show();
    }

    ~Window() override { window.document().undoStack().clear(); }  // closes without a question

    void settle()
    {
        ASSERT_TRUE(QTest::qWaitFor(
            [this] {
                return window.recompute().isCurrent() && window.verdict().isCurrent() &&
                       window.tuning().findingsPanel().isCurrent();
            },
            kPatience_ms));
        QCoreApplication::processEvents();
    }

    void open(const char* sample)
    {
        ASSERT_TRUE(window.openFile(samplePath(sample)));
        settle();
    }

    void change(const std::function<void(stillbay::Setup&)>& how)
    {
        ASSERT_TRUE(document.edit(QStringLiteral("a change"), {}, how));
    }

    template <class T>
    T* named(const QString& accessibleName)
    {
        for (T* widget : window.findChildren<T*>())
            if (widget->accessibleName() == accessibleName)
                return widget;
        ADD_FAILURE() << "no widget named " << qPrintable(accessibleName);
        return nullptr;
    }

    /// Brings every tab to the front that the widget stands on.
    static void showPage(QWidget& widget)
    {
        for (QWidget* page = &widget; page->parentWidget(); page = page->parentWidget())
            if (auto* const tabs = qobject_cast<QTabWidget*>(page->parentWidget()->parentWidget()))
                tabs->setCurrentWidget(page);
    }

    QString visibleRefusal() const
    {
        for (const QLabel* label : window.findChildren<QLabel*>())
            if (!label->isHidden() && label->text().startsWith(QStringLiteral("Not ")))
                return label->text();
        return {};
    }

    MainWindow window;
    Document& document = window.document();
};

// Takes the handle of a slider with the left button and moves it by so many pixels, in steps.
inline void drag(QSlider& slider, int pixels)
{
    QStyleOptionSlider option;
    option.initFrom(&slider);
    option.subControls = QStyle::SC_SliderGroove | QStyle::SC_SliderHandle;
    option.orientation = slider.orientation();
    option.minimum = slider.minimum();
    option.maximum = slider.maximum();
    option.sliderPosition = slider.sliderPosition();
    option.sliderValue = slider.value();
    const QRect handle = slider.style()->subControlRect(QStyle::CC_Slider, &option,
                                                        QStyle::SC_SliderHandle, &slider);
    const QPoint start = handle.center();
    QTest::mousePress(&slider, Qt::LeftButton, {}, start);
    for (int step = 1; step <= 8; ++step)
        QTest::mouseMove(&slider, start + QPoint(pixels * step / 8, 0), 5);
    QTest::mouseRelease(&slider, Qt::LeftButton, {}, start + QPoint(pixels, 0));
}

inline std::vector<QPointF> samplesOf(const QwtPlotCurve& curve)
{
    std::vector<QPointF> samples;
    for (std::size_t k = 0; k < curve.dataSize(); ++k)
        samples.push_back(curve.sample(static_cast<int>(k)));
    return samples;
}

}  // namespace stillbay::ui

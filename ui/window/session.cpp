// SPDX-License-Identifier: MIT
#include "ui/window/session.h"

#include <QAbstractButton>
#include <QComboBox>
#include <QMainWindow>
#include <QScreen>
#include <QSettings>
#include <QSplitter>
#include <QTabWidget>

namespace stillbay::ui {
namespace {

constexpr int kVersion = 1;  // of the layout: raise it when an older one no longer fits
constexpr QSize kFirstSize(1280, 800);
constexpr QSize kFrame(8, 44);  // of common desktops; the true one is known only when it is shown
const QString kRemembered = QStringLiteral("view.");

const QString kVersionKey = QStringLiteral("window/version");
const QString kGeometryKey = QStringLiteral("window/geometry");
const QString kViewGroup = QStringLiteral("window/view");

// Calls with each remembered widget of one kind and its name.
template <class Widget, class Do>
void eachRemembered(const QMainWindow& window, const Do& act)
{
    for (Widget* widget : window.findChildren<Widget*>())
        if (widget->objectName().startsWith(kRemembered))
            act(*widget, widget->objectName());
}

// Entries may be left out or added by what the window shows: their data, where they have any, says
// which is meant.
QByteArray choiceOf(const QComboBox& box)
{
    const QVariant data = box.currentData();
    return data.isValid() ? data.toByteArray() : QByteArray::number(box.currentIndex());
}

void choose(QComboBox& box, const QByteArray& choice)
{
    for (int k = 0; k < box.count(); ++k) {
        const QVariant data = box.itemData(k);
        if ((data.isValid() ? data.toByteArray() : QByteArray::number(k)) == choice)
            box.setCurrentIndex(k);
    }
}

}  // namespace

QSize firstSize(const QSize& available)
{
    return kFirstSize.boundedTo(available - kFrame);
}

Session::Session(QMainWindow& window) : m_window(window), m_first(look()) {}

Session::State Session::look() const
{
    State state;
    eachRemembered<QSplitter>(m_window, [&](const QSplitter& splitter, const QString& name) {
        state[name] = splitter.saveState();
    });
    eachRemembered<QTabWidget>(m_window, [&](const QTabWidget& tabs, const QString& name) {
        if (tabs.currentWidget())
            state[name] = tabs.currentWidget()->objectName().toUtf8();
    });
    eachRemembered<QAbstractButton>(m_window, [&](const QAbstractButton& box, const QString& name) {
        state[name] = box.isChecked() ? "on" : "off";
    });
    eachRemembered<QComboBox>(
        m_window, [&](const QComboBox& box, const QString& name) { state[name] = choiceOf(box); });
    return state;
}

void Session::arrange(const State& state)
{
    eachRemembered<QSplitter>(m_window, [&](QSplitter& splitter, const QString& name) {
        splitter.restoreState(state.value(name));
    });
    eachRemembered<QTabWidget>(m_window, [&](QTabWidget& tabs, const QString& name) {
        for (int k = 0; k < tabs.count(); ++k)
            if (state.contains(name) && tabs.widget(k)->objectName() == state[name])
                tabs.setCurrentIndex(k);
    });
    eachRemembered<QAbstractButton>(m_window, [&](QAbstractButton& box, const QString& name) {
        if (state.contains(name))
            box.setChecked(state[name] == "on");
    });
    eachRemembered<QComboBox>(m_window, [&](QComboBox& box, const QString& name) {
        if (state.contains(name))
            choose(box, state[name]);
    });
}

void Session::restore()
{
    QSettings settings;
    const bool ours = settings.value(kVersionKey).toInt() == kVersion;
    if (!ours || !m_window.restoreGeometry(settings.value(kGeometryKey).toByteArray()))
        m_window.resize(firstSize(m_window.screen()->availableSize()));
    if (!ours)
        return;
    State state;
    settings.beginGroup(kViewGroup);
    for (const QString& name : settings.childKeys())
        state[name] = settings.value(name).toByteArray();
    arrange(state);
}

void Session::store() const
{
    QSettings settings;
    settings.setValue(kVersionKey, kVersion);
    settings.setValue(kGeometryKey, m_window.saveGeometry());
    settings.beginGroup(kViewGroup);
    const State state = look();
    for (auto entry = state.begin(); entry != state.end(); ++entry)
        settings.setValue(entry.key(), entry.value());
}

void Session::reset()
{
    m_window.showNormal();
    m_window.resize(firstSize(m_window.screen()->availableSize()));
    arrange(m_first);
}

}  // namespace stillbay::ui

import { createRouter, createWebHashHistory, type RouteRecordRaw } from 'vue-router';
// The screen that is opened most comes with the shell; the others are fetched when they are gone to.
import MaterialsPage from '../materials/MaterialsPage.vue';

const MOVED_TO_CALCULATORS = ['neutralise', 'preserve', 'screening'];

const routes: RouteRecordRaw[] = [
  { path: '/', name: 'home', component: () => import('./Home.vue') },
  { path: '/welcome', name: 'welcome', component: () => import('../library/Welcome.vue') },
  {
    path: '/materials',
    component: MaterialsPage,
    children: [
      { path: '', name: 'materials', components: {} },
      { path: ':id', name: 'material', component: () => import('../materials/MaterialPane.vue') },
    ],
  },
  {
    path: '/substances',
    component: () => import('../substances/SubstancesPage.vue'),
    children: [
      { path: '', name: 'substances', components: {} },
      { path: ':id', name: 'substance', component: () => import('../substances/SubstancePane.vue') },
    ],
  },
  {
    path: '/limits',
    component: () => import('../limits/LimitsPage.vue'),
    children: [
      { path: '', name: 'limits', components: {} },
      { path: ':id', name: 'limit', component: () => import('../limits/LimitPane.vue') },
    ],
  },
  { path: '/take-in', name: 'take-in', component: () => import('../imports/TakeInPage.vue') },
  { path: '/data-sheet', name: 'data-sheet', component: () => import('../datasheets/DataSheetPage.vue') },
  { path: '/compare', name: 'compare', component: () => import('../materials/ComparePage.vue') },
  { path: '/formulas', name: 'formulas', component: () => import('../formulas/FormulasPage.vue') },
  {
    path: '/formulas/compare',
    name: 'compare-formulas',
    component: () => import('../formulas/CompareFormulas.vue'),
  },
  {
    path: '/formulas/differences',
    name: 'differences',
    component: () => import('../formulas/DifferencesPage.vue'),
  },
  { path: '/formulas/:id', name: 'formula', component: () => import('../formulas/FormulaPage.vue') },
  {
    path: '/formulas/:id/versions',
    name: 'versions',
    component: () => import('../formulas/VersionsPage.vue'),
  },
  {
    path: '/formulas/:id/reformulate',
    name: 'reformulate',
    component: () => import('../reformulate/ReformulatePage.vue'),
  },
  { path: '/swap', name: 'swap', component: () => import('../swap/SwapPage.vue') },
  { path: '/batches', name: 'batches', component: () => import('../batches/BatchesPage.vue') },
  { path: '/batches/:id', name: 'batch', component: () => import('../batches/BatchPage.vue') },
  {
    path: '/bench',
    name: 'bench',
    component: () => import('../emulsions/BenchPage.vue'),
    // Addresses kept from when these stood on the bench.
    beforeEnter: ({ query }) =>
      MOVED_TO_CALCULATORS.includes(String(query.tool)) ? { name: 'calculators', query } : true,
  },
  {
    path: '/calculators',
    name: 'calculators',
    component: () => import('../calculators/CalculatorsPage.vue'),
  },
  { path: '/settings', name: 'settings', component: () => import('../settings/SettingsPage.vue') },
  { path: '/help', name: 'help', component: () => import('../help/HelpPage.vue') },
  { path: '/library', name: 'library', component: () => import('../library/LibraryPage.vue') },
  { path: '/library/meet', name: 'meet', component: () => import('../meeting/MeetPage.vue') },
  {
    path: '/library/look-alikes',
    name: 'look-alikes',
    component: () => import('../lookalikes/LookAlikesPage.vue'),
  },
  { path: '/:rest(.*)*', redirect: '/' },
];

export const router = createRouter({ history: createWebHashHistory(), routes });

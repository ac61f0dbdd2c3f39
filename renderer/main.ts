import { PiniaColada } from '@pinia/colada';
import { createPinia } from 'pinia';
import { createApp } from 'vue';
import App from './shell/App.vue';
import { router } from './shell/router';
import './styles/base.css';

// The service is on this machine: asking again at every screen costs little, and nothing shown is ever out of date.
const fresh = { queryOptions: { staleTime: 0 } };

createApp(App).use(createPinia()).use(PiniaColada, fresh).use(router).mount('#app');

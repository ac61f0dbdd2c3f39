import type { Source } from '../working/working';

/** Where the emulsion formulas come from; the screens print these beside each figure. */
export const GRIFFIN_1954: Source = {
  text: 'Griffin W.C., Calculation of HLB values of non-ionic surfactants, J. Soc. Cosmet. Chem. 5, 249-256 (1954)',
  basis: 'read',
};
export const GRIFFIN_1949: Source = {
  text: 'Griffin W.C., Classification of surface-active agents by HLB, J. Soc. Cosmet. Chem. 1, 311-326 (1949)',
  basis: 'memory',
};
export const DAVIES_1957: Source = {
  text: 'Davies J.T., A quantitative kinetic theory of emulsion type. I. Physical chemistry of the emulsifying agent, Proc. 2nd Int. Congr. Surface Activity, vol. 1, 426-438, Butterworths, London 1957',
  basis: 'memory',
};
export const LIN_1970: Source = {
  text: 'Lin T.J., Surfactant location and required HLB, J. Soc. Cosmet. Chem. 21, 365-375 (1970)',
  basis: 'memory',
};
export const SALAGER_1979: Source = {
  text: 'Salager J.-L. et al., Optimum formulation of surfactant/water/oil systems for minimum interfacial tension or phase behavior, SPE J. 19, 107-115 (1979), as given in Marquez R., A Course on HLD/HLDN, module 2',
  basis: 'read',
};
export const BOURREL_1980: Source = {
  text: 'Bourrel M., Salager J.-L., Schechter R.S., Wade W.H., A correlation for phase behavior of nonionic surfactants, J. Colloid Interface Sci. 75, 451-461 (1980), as given in Marquez R., A Course on HLD/HLDN, module 2',
  basis: 'read',
};
export const CAYIAS_1976: Source = {
  text: 'Cayias J.L., Schechter R.S., Wade W.H., Modeling crude oils for low interfacial tension, SPE J. 16, 351-357 (1976)',
  basis: 'memory',
};
export const ACOSTA_2008: Source = {
  text: 'Acosta E., Yuan J., Bhakta A., The characteristic curvature of ionic surfactants, J. Surfact. Deterg. 11, 145-158 (2008)',
  basis: 'memory',
};

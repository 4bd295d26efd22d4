'use client';

import { FailedPage } from '@/app/_ui/failed-page';

export default FailedPage;

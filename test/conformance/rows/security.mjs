// Section 8: security. Rows on tokens need a service that asks for them, and its key (`--key`).
import { signToken } from '../token.mjs';
import { notTestable, statusIs, unless } from '../verdict.mjs';

const local = ['localhost', '127.0.0.1', '[::1]'];

/** Calls the main service with a token that is good but for the parts given. */
async function callWith({ ask, main, root, key }, parts) {
  const path = `/cds-services/${(await main()).id}`;
  return ask('conf-j', { token: signToken(key, root + path, parts) });
}

const needsKey = ({ key }) => {
  if (key === undefined) notTestable('needs a service that asks for tokens: --key FILE');
};

const refuses =
  (...cases) =>
  async (service) => {
    needsKey(service);
    for (const parts of cases) {
      const said = statusIs(await callWith(service, parts), 401, JSON.stringify(parts));
      if (said !== undefined) return said;
    }
    return undefined;
  };

const seconds = () => Math.floor(Date.now() / 1000);

export const rows = [
  {
    id: 'J-01',
    level: 'SHALL',
    title: 'TLS for everything',
    run: async ({ root }) => {
      const { protocol, hostname } = new URL(root);
      if (protocol !== 'https:' && local.includes(hostname))
        notTestable('on this machine TLS is not asked for');
      return unless(protocol === 'https:', 'the base URL is not https');
    },
  },
  {
    id: 'J-02',
    level: 'SHOULD',
    title: 'a call without a token is refused',
    run: async (service) => {
      needsKey(service);
      return statusIs(await service.ask('conf-j02', { token: '' }), 401, 'no token');
    },
  },
  {
    id: 'J-04',
    level: 'SHALL',
    title: 'kid and typ are asked for',
    run: refuses({ header: { kid: undefined } }, { header: { typ: undefined } }),
  },
  {
    id: 'J-05',
    level: 'SHALL',
    title: 'neither unsigned nor symmetric tokens',
    run: refuses({ header: { alg: 'none' } }, { header: { alg: 'HS256' } }),
  },
  {
    id: 'J-06',
    level: 'SHALL',
    title: 'iss, aud, exp, iat and jti are asked for',
    run: refuses(
      ...['iss', 'aud', 'exp', 'iat', 'jti'].map((claim) => ({ payload: { [claim]: undefined } })),
    ),
  },
  {
    id: 'J-07',
    level: 'SHALL',
    title: 'aud is the address that is called',
    run: refuses({ payload: { aud: 'https://another.invalid/cds-services/x' } }),
  },
  {
    id: 'J-08',
    level: 'SHOULD',
    title: 'an unknown issuer is refused',
    run: refuses({ payload: { iss: 'https://unknown.invalid' } }),
  },
  {
    id: 'J-09',
    level: 'P',
    title: 'expired, future and long-lived tokens are refused',
    run: async (service) =>
      refuses(
        { payload: { iat: seconds() - 600, exp: seconds() - 300 } },
        { payload: { iat: seconds() + 600, exp: seconds() + 900 } },
        { payload: { exp: seconds() + 86_400 } },
      )(service),
  },
  {
    id: 'J-10',
    level: 'P',
    title: 'a token is good once',
    run: async (service) => {
      needsKey(service);
      const parts = { payload: { jti: `conf-j10-${performance.now()}` } };
      return (
        statusIs(await callWith(service, parts), 200, 'first use') ??
        statusIs(await callWith(service, parts), 401, 'second use')
      );
    },
  },
  {
    id: 'J-11',
    level: 'P',
    title: '401 has no body',
    run: async (service) => {
      needsKey(service);
      const response = await callWith(service, { payload: { exp: seconds() - 5000, iat: seconds() - 6000 } });
      return unless(response.text === '', 'the refusal has a body');
    },
  },
  {
    id: 'B-10',
    level: 'SHALL',
    title: 'feedback asks for the same token as a call',
    run: async (service) => {
      needsKey(service);
      return statusIs(
        await service.feedback({ feedback: [] }, { token: '' }),
        401,
        'feedback without a token',
      );
    },
  },
  {
    id: 'J-13',
    level: 'rule',
    title: 'a preflight is answered without a token',
    run: async (service) => {
      const { id } = await service.main();
      const headers = {
        Origin: 'https://ehr.invalid',
        'Access-Control-Request-Method': 'POST',
        'Access-Control-Request-Headers': 'authorization,content-type',
      };
      for (const path of ['/cds-services', `/cds-services/${id}`, `/cds-services/${id}/feedback`]) {
        const response = await service.send('OPTIONS', path, { headers, token: '' });
        const said =
          statusIs(response, [200, 204], `OPTIONS ${path}`) ??
          unless(
            /authorization/i.test(response.headers.get('access-control-allow-headers') ?? ''),
            'Authorization is not allowed',
          );
        if (said !== undefined) return said;
      }
      return undefined;
    },
  },
];
